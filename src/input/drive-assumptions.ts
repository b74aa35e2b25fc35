import { driveKinds } from '../drives/columns.js';
import { driveTypes } from '../drives/registry.js';
import type { DriveKind } from '../drives/sheet.js';
import { type AssumptionRow, fieldRows, fromExperience, row } from './assumption-row.js';

/** Typical figures of a drive type, in the value grammar. */
interface TypeFigures {
  efficiency: string;
  floor: string;
  ceiling: string;
  noLoadShare: string;
  /** null: nothing slides that could lock. */
  frictionRunning: string | null;
  frictionStatic: string | null;
  electronicsMass: string;
  extraCost: string;
  reworkHours: string;
}

const typeFigures: Record<DriveKind, TypeFigures> = {
  'position-servo': {
    efficiency: '0.45..0.65..0.85',
    floor: '0.30',
    ceiling: '0.90',
    noLoadShare: '0.04..0.08..0.20',
    frictionRunning: null,
    frictionStatic: null,
    electronicsMass: '0 g',
    extraCost: '0',
    reworkHours: '0.5..2 h',
  },
  'worm-gearmotor': {
    efficiency: '0.18..0.35..0.50',
    floor: '0.08',
    ceiling: '0.65',
    noLoadShare: '0.04..0.08..0.20',
    frictionRunning: '0.03..0.06..0.10',
    frictionStatic: '0.06..0.10..0.18',
    electronicsMass: '12.5..50 g',
    extraCost: '7.5..30',
    reworkHours: '4..16 h',
  },
  'screw-actuator': {
    efficiency: '0.18..0.30..0.45',
    floor: '0.10',
    ceiling: '0.65',
    noLoadShare: '0.05..0.10..0.25',
    frictionRunning: '0.08..0.12..0.18',
    frictionStatic: '0.10..0.15..0.22',
    electronicsMass: '12.5..50 g',
    extraCost: '7.5..30',
    reworkHours: '6..24 h',
  },
};

/** Extra rows of single types. */
const ownRows: Record<DriveKind, AssumptionRow[]> = {
  'position-servo': [
    row(
      'drive',
      'position-servo',
      'pulse_frequency_range',
      'frequency',
      '0.3..20 kHz',
      `digital servos; ${fromExperience}`,
    ),
  ],
  'worm-gearmotor': [
    row('drive', 'worm-gearmotor', 'pressure_angle', 'angle', '20 deg', 'the usual gearing'),
    ...idleRows('worm-gearmotor'),
  ],
  'screw-actuator': [
    row('drive', 'screw-actuator', 'flank_angle', 'angle', '15 deg', 'a trapezoidal thread'),
    row('drive', 'screw-actuator', 'collar_friction', 'ratio', '0.08..0.12..0.18', 'as in the thread'),
    ...idleRows('screw-actuator'),
  ],
};

function idleRows(kind: DriveKind): AssumptionRow[] {
  return [
    row('drive', kind, 'idle_current_switched', 'current', '0 mA', 'a bare motor draws nothing at rest'),
    row(
      'drive',
      kind,
      'idle_current_with_driver',
      'current',
      '2.5..10 mA',
      `a small driver board; ${fromExperience}`,
    ),
  ];
}

function typeRows(kind: DriveKind): AssumptionRow[] {
  const figures = typeFigures[kind];
  const friction = (item: string, value: string | null) =>
    value === null ? [] : [row('drive', kind, item, 'ratio', value)];
  return [
    row('drive', kind, 'forward_efficiency', 'ratio', figures.efficiency),
    row(
      'drive',
      kind,
      'forward_efficiency_floor',
      'ratio',
      figures.floor,
      `below it a sheet is odd; ${fromExperience}`,
    ),
    row(
      'drive',
      kind,
      'forward_efficiency_ceiling',
      'ratio',
      figures.ceiling,
      `above it a sheet is odd; ${fromExperience}`,
    ),
    row(
      'drive',
      kind,
      'no_load_current_share',
      'ratio',
      figures.noLoadShare,
      `of the stall current; ${fromExperience}`,
    ),
    ...friction('friction_running', figures.frictionRunning),
    ...friction('friction_static', figures.frictionStatic),
    row(
      'drive',
      kind,
      'maximum_voltage_ratio',
      'ratio',
      String(driveTypes[kind].assumedVoltageRatio),
      `times the rated voltage; ${fromExperience}`,
    ),
    row('drive', kind, 'change_electronics_mass', 'mass', figures.electronicsMass),
    row('drive', kind, 'change_extra_cost', 'money', figures.extraCost),
    row('drive', kind, 'change_rework_hours', 'time', figures.reworkHours),
    ...ownRows[kind],
    ...fieldRows('drive', kind, driveTypes[kind].columns),
  ];
}

/** Rows about drives: of every type, then of each. */
export function driveAssumptions(): AssumptionRow[] {
  return [
    row(
      'drive',
      'any',
      'static_friction_ratio',
      'ratio',
      '1.0..1.25..1.6',
      `static over running friction; ${fromExperience}`,
    ),
    row(
      'drive',
      'any',
      'hold_friction_share',
      'ratio',
      '0..0.15..0.8',
      `share of the friction band that a powered hold works against; ${fromExperience}`,
    ),
    row(
      'drive',
      'any',
      'coupling_efficiency_geared',
      'ratio',
      '0.9',
      `one pair of gears or a belt; ${fromExperience}`,
    ),
    row(
      'drive',
      'any',
      'coupling_efficiency_spool',
      'ratio',
      '0.95',
      `a cord over a drum; ${fromExperience}`,
    ),
    ...driveKinds.flatMap(typeRows),
  ];
}
