import { choice, type FieldDeclaration, quantity, yesNo } from '../quantity/field.js';

const size = (name: string, property: string, which: string): FieldDeclaration =>
  quantity(name, property, 'length', {
    meaning: `${which} of the drive with its lugs and cables`,
    how: 'a calliper over everything that must fit in',
    plausible: '5..600 mm',
    within: '0.1..10000 mm',
  });

/** Mass, envelope and heat paths. */
export const bodyColumns: readonly FieldDeclaration[] = [
  quantity('mass', 'massKg', 'mass', {
    meaning: 'mass of one drive with horn or eyes, without mount and electronics',
    how: 'a kitchen scale, one minute',
    plausible: '5..3000 g',
    within: '0..1000 kg',
    spread: 'mass',
  }),
  quantity('mount_mass', 'mountMassKg', 'mass', {
    meaning: 'mass of brackets, screws and linkage of one drive',
    how: 'a kitchen scale; for one not yet built, the volume of the parts times their density',
    plausible: '0..2000 g',
    within: '0..1000 kg',
  }),
  quantity('electronics_mass', 'electronicsMassKg', 'mass', {
    meaning: 'mass of driver board, relays and extra wire of one drive',
    how: 'a kitchen scale',
    plausible: '0..1000 g',
    within: '0..1000 kg',
  }),
  yesNo('rides_on_feature', 'ridesOnFeature', {
    meaning: 'whether the drive moves with the feature and so adds to its mass',
    how: 'look where it is mounted',
  }),
  quantity('ride_distance', 'rideDistanceM', 'length', {
    meaning: 'distance from the hinge to the middle of a drive that rides on the feature',
    how: 'a ruler, towards the tip positive',
    within: '-10..10 m',
  }),
  size('length', 'lengthM', 'length'),
  size('width', 'widthM', 'width'),
  size('height', 'heightM', 'height'),
  quantity('winding_to_case', 'windingToCaseKPerW', 'thermal-resistance', {
    meaning: 'how much warmer than the case the winding gets per watt',
    how: 'winding resistance before and after a known load gives the winding, a probe thermometer the case',
    plausible: '0.5..30 K/W',
    within: '0.001..1000 K/W',
  }),
  quantity('case_to_air', 'caseToAirKPerW', 'thermal-resistance', {
    meaning: 'how much warmer than the air the case gets per watt',
    how: 'a probe thermometer on the case after half an hour at a known power',
    plausible: '0.5..60 K/W',
    within: '0.001..1000 K/W',
  }),
  quantity('winding_heat_capacity', 'windingHeatCapacityJPerK', 'heat-capacity', {
    meaning: 'heat that warms the winding by one kelvin',
    how: 'copper mass times 390 J/(kg·K)',
    plausible: '0.2..200 J/K',
    within: '0.0001..100000 J/K',
  }),
  quantity('case_heat_capacity', 'caseHeatCapacityJPerK', 'heat-capacity', {
    meaning: 'heat that warms the rest of the drive by one kelvin',
    how: 'mass of the drive times 800 J/(kg·K)',
    plausible: '2..3000 J/K',
    within: '0.0001..1000000 J/K',
  }),
  quantity('winding_limit', 'windingLimitK', 'temperature', {
    meaning: 'highest temperature the winding stands',
    how: 'from the data sheet: the insulation class, or the motor’s temperature range',
    plausible: '70..180 °C',
    within: '250..1000 K',
  }),
  choice('case_material', 'caseMaterial', ['plastic', 'metal'], {
    meaning: 'what the case is made of where somebody can touch it',
    how: 'look at it',
  }),
];
