import { hourS, inchM, zeroCelsiusK } from './exact.js';
import { power } from './power.js';
import { linear, shifted, type Unit } from './unit.js';

const electrical: Unit[] = [
  linear('current', 'A', 1, ['amp', 'amps', 'ampere', 'amperes']),
  linear('current', 'mA', 0.001, ['milliamp', 'milliamps']),
  linear('current', 'µA', 1e-6),
  linear('voltage', 'V', 1, ['volt', 'volts', 'VDC', 'V DC']),
  linear('voltage', 'mV', 0.001),
  linear('voltage', 'kV', 1000),
  linear('resistance', 'Ω', 1, ['ohm', 'ohms', 'R']),
  linear('resistance', 'mΩ', 0.001, ['mohm', 'mohms', 'milliohm', 'milliohms']),
  linear('resistance', 'kΩ', 1000, ['kohm', 'kohms']),
  linear('charge', 'Ah', hourS, ['A·h']),
  linear('charge', 'mAh', hourS * 0.001, ['mA·h']),
  linear('charge', 'C', 1, ['A·s', 'coulomb', 'coulombs']),
  linear('power', 'W', 1, ['watt', 'watts']),
  linear('power', 'mW', 0.001),
  linear('power', 'kW', 1000),
  linear('energy', 'J', 1, ['joule', 'joules', 'W·s']),
  linear('energy', 'mJ', 0.001),
  linear('energy', 'Wh', hourS, ['W·h']),
  linear('energy', 'mWh', hourS * 0.001, ['mW·h']),
  linear('frequency', 'Hz', 1, ['hertz', '1/s']),
  linear('frequency', 'kHz', 1000),
  linear('frequency', 'MHz', 1e6),
  linear('charge-rate', 'C', 1, ['1/h']),
];

const kelvin = ['K', 'kelvin'];

const thermal: Unit[] = [
  shifted('°C', zeroCelsiusK, 1, ['degC', 'deg C', 'celsius', 'C']),
  shifted('K', 0, 1, kelvin),
  shifted('°F', 459.67, 5 / 9, ['degF', 'deg F', 'fahrenheit', 'F']),
  linear('thermal-resistance', 'K/W', 1, ['°C/W', 'degC/W', 'C/W']),
  linear('thermal-resistance', '°F/W', 5 / 9, ['degF/W']),
  linear('heat-capacity', 'J/K', 1, ['J/°C', 'J/degC', 'J/C', 'W·s/K']),
  linear('heat-capacity', 'J/°F', 9 / 5, ['J/degF']),
  linear('molar-energy', 'kJ/mol', 1000),
  linear('molar-energy', 'J/mol', 1),
  linear('resistance-charge', 'mΩ·Ah', 0.001 * hourS, ['mohm·Ah']),
  linear('resistance-charge', 'Ω·Ah', hourS, ['ohm·Ah']),
  linear('per-kelvin', '%/K', 0.01, ['%/°C']),
];

/** Diameter of an American wire gauge: 0.127 mm × 92^((36 − n)/39), ASTM B258; area of the round wire. */
function gaugeAreaM2(gauge: number): number {
  const diameterM = 0.005 * inchM * power(92, (36 - gauge) / 39);
  return (Math.PI / 4) * diameterM * diameterM;
}

const wireGauge: Unit = {
  symbol: 'AWG',
  dimension: 'wire-size',
  spellings: ['ga', 'gauge'],
  toSi: gaugeAreaM2,
  fromSi: (areaM2) =>
    36 - (39 * Math.log(Math.sqrt((4 * areaM2) / Math.PI) / (0.005 * inchM))) / Math.log(92),
  slope: (gauge) => (gaugeAreaM2(gauge) * 2 * Math.log(92)) / 39,
  slipFor: null,
};

const pure: Unit[] = [
  linear('ratio', '', 1),
  linear('ratio', '%', 0.01, ['percent', 'pct']),
  linear('count', '', 1),
  linear('money', '', 1),
  linear('sound-level', 'dB', 1, ['dBA', 'dB(A)', 'dB A']),
  linear('wire-size', 'mm²', 1e-6, ['sqmm']),
  wireGauge,
];

/** Units of electricity and heat, pure numbers and levels. */
export const electricalUnits: readonly Unit[] = [...electrical, ...thermal, ...pure];
