import {
  degreeRad,
  footM,
  hourS,
  inchM,
  kilogramForceN,
  minuteS,
  ounceForceN,
  ounceKg,
  poundForceN,
  poundKg,
} from './exact.js';
import { linear, products, productsEitherWay, quotients, reciprocal, slip, type Unit } from './unit.js';

const inch = ['in', 'inch', 'inches', '"'];
const foot = ['ft', 'foot', 'feet'];
const degree = ['deg', 'degs', 'degree', 'degrees', '°'];
const second = ['s', 'sec', 'secs', 'second', 'seconds'];
const minute = ['min', 'mins', 'minute', 'minutes'];
const hour = ['h', 'hr', 'hrs', 'hour', 'hours'];
const kilogramForce = ['kg', 'kgf', 'kp', 'kgs'];
const gramForce = ['g', 'gf', 'p'];
const pound = ['lb', 'lbf', 'lbs'];
const ounce = ['oz', 'ozf'];

const kilogramCentimetre = linear('torque', 'kg·cm', kilogramForceN * 0.01, products(kilogramForce, ['cm']));
const ounceInch = linear('torque', 'oz·in', ounceForceN * inchM, productsEitherWay(ounce, inch));
const poundInch = linear('torque', 'lb·in', poundForceN * inchM, productsEitherWay(pound, inch));

const torques: Unit[] = [
  linear('torque', 'N·m', 1),
  linear('torque', 'N·cm', 0.01),
  linear('torque', 'N·mm', 0.001),
  linear('torque', 'mN·m', 0.001),
  kilogramCentimetre,
  linear('torque', 'kg·m', kilogramForceN, products(kilogramForce, ['m'])),
  linear('torque', 'kg·mm', kilogramForceN * 0.001, products(kilogramForce, ['mm'])),
  linear('torque', 'g·cm', kilogramForceN * 1e-5, products(gramForce, ['cm'])),
  ounceInch,
  poundInch,
  linear('torque', 'lb·ft', poundForceN * footM, productsEitherWay(pound, foot)),
  slip(kilogramCentimetre, quotients(kilogramForce, ['cm'])),
  slip(ounceInch, quotients(ounce, inch)),
  slip(poundInch, quotients(pound, inch)),
];

const forces: Unit[] = [
  linear('force', 'N', 1, ['newton', 'newtons']),
  linear('force', 'mN', 0.001),
  linear('force', 'kN', 1000),
  linear('force', 'kgf', kilogramForceN, ['kp']),
  linear('force', 'gf', kilogramForceN * 0.001),
  linear('force', 'lbf', poundForceN),
  linear('force', 'ozf', ounceForceN),
];

const masses: Unit[] = [
  linear('mass', 'g', 0.001, ['gr', 'gram', 'grams', 'gramme', 'grammes']),
  linear('mass', 'kg', 1, ['kgs', 'kilo', 'kilos', 'kilogram', 'kilograms']),
  linear('mass', 'mg', 1e-6),
  linear('mass', 'oz', ounceKg, ['ounce', 'ounces']),
  linear('mass', 'lb', poundKg, ['lbs', 'pound', 'pounds']),
];

const lengths: Unit[] = [
  linear('length', 'mm', 0.001, ['millimetre', 'millimetres', 'millimeter', 'millimeters']),
  linear('length', 'cm', 0.01, ['centimetre', 'centimetres', 'centimeter', 'centimeters']),
  linear('length', 'm', 1, ['metre', 'metres', 'meter', 'meters']),
  linear('length', 'µm', 1e-6),
  linear('length', 'in', inchM, inch),
  linear('length', 'ft', footM, foot),
  linear('area', 'mm²', 1e-6, ['sqmm']),
  linear('area', 'cm²', 1e-4, ['sqcm']),
  linear('area', 'm²', 1, ['sqm']),
  linear('area', 'in²', inchM * inchM, ['sqin']),
  linear('area', 'ft²', footM * footM, ['sqft']),
];

const angles: Unit[] = [
  linear('angle', 'deg', degreeRad, degree),
  linear('angle', 'rad', 1, ['radian', 'radians']),
  linear('angle', 'turn', 2 * Math.PI, ['turns', 'rev', 'revs']),
];

const times: Unit[] = [
  linear('time', 's', 1, second),
  linear('time', 'ms', 0.001, ['msec']),
  linear('time', 'µs', 1e-6),
  linear('time', 'min', minuteS, minute),
  linear('time', 'h', hourS, hour),
];

/** `s/60deg`, `sec/60°`, … for one stretch of the travel. */
function secondsPer(stretchDeg: number): Unit {
  const stretches = degree.map((word) => `${stretchDeg}${word}`);
  const symbol = `s/${stretchDeg}deg`;
  return reciprocal('angular-speed', symbol, stretchDeg * degreeRad, quotients(second, stretches));
}

const speeds: Unit[] = [
  linear('speed', 'mm/s', 0.001, quotients(['mm'], second)),
  linear('speed', 'cm/s', 0.01, quotients(['cm'], second)),
  linear('speed', 'm/s', 1, quotients(['m'], second)),
  linear('speed', 'in/s', inchM, [...quotients(inch, second), 'ips']),
  linear('speed', 'ft/s', footM, [...quotients(foot, second), 'fps']),
  linear('speed', 'mm/min', 0.001 / minuteS, quotients(['mm'], minute)),
  linear('speed', 'm/min', 1 / minuteS, quotients(['m'], minute)),
  linear('speed', 'km/h', 1000 / hourS, ['kph', 'kmh']),
  linear('angular-speed', 'rad/s', 1, quotients(['rad'], second)),
  linear('angular-speed', 'deg/s', degreeRad, quotients(degree, second)),
  linear('angular-speed', 'rpm', (2 * Math.PI) / minuteS, [
    ...quotients(['rev', 'revs', 'r', '1', 'U', 'turn', 'turns'], minute),
  ]),
  linear('angular-speed', 'rev/s', 2 * Math.PI, [...quotients(['rev', 'revs', 'turns'], second), 'rps']),
  secondsPer(60),
  secondsPer(90),
  secondsPer(360),
];

const inertias: Unit[] = [
  linear('inertia', 'kg·m²', 1),
  linear('inertia', 'kg·cm²', 1e-4),
  linear('inertia', 'kg·mm²', 1e-6),
  linear('inertia', 'g·m²', 1e-3),
  linear('inertia', 'g·cm²', 1e-7),
  linear('inertia', 'g·mm²', 1e-9),
  linear('inertia', 'oz·in²', ounceKg * inchM * inchM),
  linear('inertia', 'lb·in²', poundKg * inchM * inchM),
];

const stiffnesses: Unit[] = [
  linear('linear-stiffness', 'N/m', 1),
  linear('linear-stiffness', 'N/cm', 100),
  linear('linear-stiffness', 'N/mm', 1000),
  linear('linear-stiffness', 'kgf/mm', kilogramForceN * 1000, quotients(kilogramForce, ['mm'])),
  linear('linear-stiffness', 'kgf/cm', kilogramForceN * 100, quotients(kilogramForce, ['cm'])),
  linear('linear-stiffness', 'lbf/in', poundForceN / inchM, quotients(pound, inch)),
  linear('rotary-stiffness', 'N·m/rad', 1),
  linear('rotary-stiffness', 'oz·in/rad', ounceForceN * inchM),
  linear('rotary-stiffness', 'N·m/deg', 1 / degreeRad, quotients(['N·m'], degree)),
  linear('rotary-stiffness', 'N·mm/deg', 0.001 / degreeRad, quotients(['N·mm'], degree)),
  linear('rotary-stiffness', 'N·cm/deg', 0.01 / degreeRad, quotients(['N·cm'], degree)),
  linear(
    'rotary-stiffness',
    'kg·cm/deg',
    (kilogramForceN * 0.01) / degreeRad,
    quotients(products(kilogramForce, ['cm']), degree),
  ),
];

/** Units of mechanics, each factor from exact.ts. */
export const mechanicalUnits: readonly Unit[] = [
  ...torques,
  ...forces,
  ...masses,
  ...lengths,
  ...angles,
  ...times,
  ...speeds,
  ...inertias,
  ...stiffnesses,
];
