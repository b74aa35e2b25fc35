import type { MeasuredQuantity } from '../study/choosing.js';

/** What it takes to measure a value on a kitchen table. */
export interface BenchWork {
  instrument: string;
  /** For one candidate or pack, setting up included. */
  minutes: number;
}

const kitchenScale = 'kitchen scale';
const luggageScale = 'luggage scale';
const ruler = 'ruler';
const ammeter = 'clamp meter or ammeter';
const phone = 'telephone camera';
const thermometer = 'probe thermometer';

/**
 * Fields that a maker can measure, with the instrument and the minutes it takes (from experience). How it is done
 * stands with each field in the field table. What is not here is decided, looked up or estimated, not measured.
 */
const work: Record<string, [instrument: string, minutes: number]> = {
  'feature.mass': [kitchenScale, 5],
  'feature.balance_distance': [`pencil and ${ruler}`, 5],
  'feature.tip_distance': [ruler, 2],
  'feature.tip_scale': [luggageScale, 5],
  'feature.inertia': ['stopwatch', 10],
  'feature.panel_area': [ruler, 10],
  'feature.friction': [luggageScale, 10],
  'feature.axis_tilt': ['spirit level or telephone', 5],
  'feature.incline': ['spirit level or telephone', 5],
  'spring.stiffness': [`${luggageScale} and ${ruler}`, 10],
  'spring.constant': [luggageScale, 5],
  'spring.rate': [`${luggageScale} and ${ruler}`, 10],
  'spring.free_length': [ruler, 2],
  'carrier.lean': ['telephone', 5],
  'air.temperature': [thermometer, 30],
  'wire.length': [ruler, 2],
  'wire.switch_resistance': ['voltmeter', 10],
  'wire.connector_resistance': ['voltmeter', 10],
  'pack.temperature': [thermometer, 30],
  capacity: ['charger that counts a full discharge', 90],
  cell_resistance: ['voltmeter and a known load', 20],
  aged_to: ['charger that counts a full discharge', 90],
  power: [ammeter, 5],
  idle_power: [ammeter, 5],
  converter_efficiency: ['two multimeters', 10],
  no_load_speed: [phone, 10],
  no_load_current: [ammeter, 5],
  stall_torque: [`${luggageScale} on an arm`, 15],
  stall_force: ['bathroom scale', 15],
  stall_current: ['clamp meter that holds its peak', 10],
  rated_torque: ['known mass on an arm', 20],
  rated_force: ['known mass', 20],
  rated_speed: [phone, 15],
  rated_current: [ammeter, 15],
  idle_current: [ammeter, 5],
  hold_current: [`${ammeter} and a known mass`, 15],
  hold_effort: [`${luggageScale} and ${ruler}`, 5],
  pulse_frequency: ['oscilloscope or telephone microphone', 15],
  backdrives_at: [luggageScale, 10],
  lead_angle: ['calliper, drive opened', 45],
  screw_lead: ['calliper', 10],
  screw_diameter: ['calliper', 5],
  friction_running: [luggageScale, 30],
  friction_static: [luggageScale, 30],
  regulator_efficiency: ['two multimeters', 15],
  mass: [kitchenScale, 2],
  mount_mass: [kitchenScale, 5],
  electronics_mass: [kitchenScale, 5],
  case_to_air: [thermometer, 40],
  winding_to_case: [`ohmmeter and ${thermometer}`, 60],
  strut_frame_arm: [ruler, 5],
  strut_feature_arm: [ruler, 5],
};

/** Assumptions that a measurement of another field replaces. */
const replacedBy: Record<string, string> = {
  resistance_capacity: 'cell_resistance',
  discharge_rating: 'cell_resistance',
  no_load_current_share: 'no_load_current',
  hold_friction_share: 'hold_current',
  static_friction_ratio: 'backdrives_at',
};

/** What measured.csv takes: readings on the drive of today in the feature, and how each is made (from experience). */
export const measuredWork: Record<MeasuredQuantity, BenchWork & { meaning: string; how: string }> = {
  runtime: {
    meaning: 'runtime on one full pack, in the show',
    how: 'start with a full pack, play the show in a loop, and stop the time when the alarm or the end comes',
    instrument: 'stopwatch',
    minutes: 120,
  },
  hold_current: {
    meaning: 'pack current of the drives while they hold, mean over the held cues',
    how: 'a multimeter in the lead of the drives, lights and controller on another lead; the mean of a minute in each held pose',
    instrument: ammeter,
    minutes: 15,
  },
  rest_current: {
    meaning: 'pack current while the feature rests, lights off',
    how: 'a multimeter in the pack lead, powered, feature in its cradle, lights off',
    instrument: ammeter,
    minutes: 5,
  },
  move_time: {
    meaning: 'time that all moves of one loop take together',
    how: 'film one loop and count the frames of its moves',
    instrument: phone,
    minutes: 10,
  },
  loop_charge: {
    meaning: 'charge that one loop takes from the pack',
    how: 'play ten loops, charge the pack with a charger that counts, and divide by ten',
    instrument: 'charger or meter that counts mAh',
    minutes: 60,
  },
  case_temperature: {
    meaning: 'hottest case temperature in the show, settled',
    how: 'tape the probe to the case, play the show until it rises no more, half an hour or longer',
    instrument: thermometer,
    minutes: 45,
  },
};

/** The field whose measurement settles a value: its own, or the one that replaces the assumption. */
export function measuredField(field: string): string {
  return (Object.hasOwn(replacedBy, field) ? replacedBy[field] : undefined) ?? field;
}

/** Instrument and minutes for a field; null when it is not something to measure. */
export function benchWork(field: string): BenchWork | null {
  const found = Object.hasOwn(work, field) ? work[field] : undefined;
  return found === undefined ? null : { instrument: found[0], minutes: found[1] };
}
