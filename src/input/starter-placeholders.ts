import type { DriveKind } from '../drives/sheet.js';

type Cells = Readonly<Record<string, string>>;

/** Items of study.csv that a starter fills; invented. */
export const items: Cells = {
  question: 'Does the wing keep its drive, or is another one worth the work?',
  project: 'Wing on a stand',
  'feature.mass': '450 g',
  'feature.balance_distance': '180 mm',
  'feature.tip_distance': '480 mm',
  'feature.lower_stop': '-30 deg',
  'feature.upper_stop': '60 deg',
  'carrier.worn': 'no',
  'pack.choice': 'pack-a',
  'target.runtime': '90',
};

/** One example row of each drive type; invented. */
export const candidates: Record<DriveKind, Cells> = {
  'position-servo': {
    id: 'servo-a',
    type: 'position-servo',
    rated_voltage: '11.1 V',
    maximum_voltage: '13 V',
    no_load_speed: '0.20 s/60deg',
    stall_torque: '35 kg·cm',
    stall_current: '2.8 A',
    mass: '80 g',
  },
  'worm-gearmotor': {
    id: 'worm-a',
    type: 'worm-gearmotor',
    rated_voltage: '12 V',
    no_load_speed: '15 rpm',
    stall_torque: '60 kg·cm',
    stall_current: '2.4 A',
    mass: '260 g',
  },
  'screw-actuator': {
    id: 'screw-a',
    type: 'screw-actuator',
    rated_voltage: '12 V',
    no_load_speed: '20 mm/s',
    stall_force: '200 N',
    stall_current: '1.8 A',
    stroke: '100 mm',
    closed_length: '205 mm',
    mass: '290 g',
  },
};

/** Four cues: up, hold, down, rest; invented. */
export const cues: readonly Cells[] = [
  { cue: 'rise', action: 'move', to: '40', seconds: '4', lights: '100' },
  { cue: 'show', action: 'hold', seconds: '30', lights: '100' },
  { cue: 'fold', action: 'move', to: '-30', seconds: '4', lights: '50' },
  { cue: 'sleep', action: 'rest', seconds: '20', lights: '20' },
];

/** One pack; invented. */
export const pack: Cells = {
  id: 'pack-a',
  chemistry: 'lipo',
  cells: '3',
  capacity: '1000 mAh',
  mass: '95 g',
};

/** What a feature mostly has beside its drive; invented. */
export const loads: readonly Cells[] = [
  {
    id: 'lamps',
    label: 'lamps in the wing',
    power: '3 W',
    voltage: '12 V',
    converter_efficiency: '85 %',
    drawn_when: 'lights',
  },
  { id: 'controller', power: '0.4 W', voltage: '5 V', drawn_when: 'always' },
];

/** Rows that stand as comments in the optional files; invented. */
export const criteria: readonly Cells[] = [
  { criterion: 'runtime', weight: '4', worth_0_at: '30 min', worth_1_at: '120 min', must: 'at least 40 min' },
  { criterion: 'body_mass', weight: '2', worth_0_at: '2 kg', worth_1_at: '0.5 kg' },
  { criterion: 'rework_hours', weight: '2', worth_0_at: '24 h', worth_1_at: '0 h' },
  { criterion: 'torque_margin', must: 'at least 1.3' },
  { criterion: 'fits', must: 'yes' },
  { criterion: 'voltage', must: 'yes' },
];
/** A day to show the columns, as comments; invented. */
export const day: readonly Cells[] = [
  { block: 'set up', minutes: '20', activity: 'still', swap_allowed: 'yes', charger: 'yes' },
  { block: 'first show', minutes: '45', activity: 'show', swap_allowed: 'no', charger: 'no' },
];
/** Readings to show the columns, as comments; invented. */
export const measured: readonly Cells[] = [
  { quantity: 'runtime', value: '75 min ±5%' },
  { quantity: 'hold_current', value: '600 mA ±50 mA' },
];
