import { count, type FieldDeclaration, quantity } from '../quantity/field.js';

/** Efficiency and the geometry of the worm or thread inside; all of it may stay blank. */
export const gearingColumns: readonly FieldDeclaration[] = [
  quantity('gear_efficiency', 'gearEfficiency', 'ratio', {
    meaning:
      'share of the motor’s work that arrives at the output; lowers the stall figure where the sheet implies more, never raises it',
    how: 'lift a known mass: work done over voltage × current × time, less the copper heat',
    shownIn: '%',
    plausible: '5..95 %',
    within: '0.001..1',
  }),
  quantity('backward_efficiency', 'backwardEfficiency', 'ratio', {
    meaning: 'share that passes from feature to motor while it runs backwards; 0 or less locks',
    how: 'lower a known mass and compare the current with the unloaded one',
    within: '-100..1',
  }),
  count('meshes', 'meshCount', 1, {
    meaning: 'number of gear meshes one behind the other',
    how: 'count the gear pairs with the lid off, or from an exploded drawing',
    to: 12,
  }),
  quantity('lead_angle', 'leadAngleRad', 'angle', {
    meaning: 'slope of the worm’s thread',
    how: 'a calliper: lead over π × pitch diameter is the tangent of the angle',
    plausible: '1..30 deg',
    within: '0.01..80 deg',
  }),
  quantity('pressure_angle', 'pressureAngleRad', 'angle', {
    meaning: 'normal pressure angle of the worm gearing',
    how: 'from the data sheet; 20° is usual, 14.5° on older gears',
    plausible: '14..30 deg',
    within: '1..60 deg',
  }),
  quantity('friction_running', 'frictionRunningCoefficient', 'ratio', {
    meaning: 'friction coefficient of worm or thread while it slides',
    how: 'not measured directly; from the pairing and its grease',
    plausible: '0.02..0.3',
    within: '0..1',
  }),
  quantity('friction_static', 'frictionStaticCoefficient', 'ratio', {
    meaning: 'friction coefficient of worm or thread at standstill',
    how: 'not measured directly; backdrives_at is the better measurement',
    plausible: '0.03..0.4',
    within: '0..1',
  }),
  quantity('screw_diameter', 'screwDiameterM', 'length', {
    meaning: 'mean diameter of the thread',
    how: 'a calliper over the thread, less half its depth',
    plausible: '2..40 mm',
    within: '0.01..1000 mm',
  }),
  quantity('screw_lead', 'screwLeadM', 'length', {
    meaning: 'travel per turn of the screw, all starts together',
    how: 'turn the screw ten times by hand and measure the travel with a calliper',
    plausible: '0.5..25 mm',
    within: '0.001..1000 mm',
  }),
  quantity('flank_angle', 'flankAngleRad', 'angle', {
    meaning: 'half of the angle between the flanks of the thread',
    how: 'trapezoidal threads 15°, ordinary metric threads 30°, square threads 0°',
    within: '0..60 deg',
  }),
  quantity('collar_diameter', 'collarDiameterM', 'length', {
    meaning: 'mean diameter on which the thrust rubs; blank with a ball bearing',
    how: 'a calliper over the thrust washer: half of outer plus inner diameter',
    plausible: '2..60 mm',
    within: '0.01..1000 mm',
  }),
  quantity('collar_friction', 'collarFrictionCoefficient', 'ratio', {
    meaning: 'friction coefficient of the thrust washer',
    how: 'not measured directly; about that of the thread',
    plausible: '0.03..0.3',
    within: '0..1',
  }),
];
