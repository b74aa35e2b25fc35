import type { Dimension } from '../../quantity/dimension.js';
import type { UnitSystem } from '../../quantity/display-units.js';
import { inchM } from '../../quantity/exact.js';
import { formatNumber } from '../../quantity/format.js';
import { unitOf } from '../../quantity/unit-table.js';
import { longestRunS } from '../../simulate/run-down.js';

/** No-break space: a number and its unit stay on one line. */
export const joined = '\u00a0';

/** Shown where a figure does not occur or could not be judged. */
export const none = '–';

type Figure = number | null | undefined;

/** A number with three digits that count and a true minus sign; a dash when there is none. */
export function number(value: Figure, digits = 3): string {
  return value === null || value === undefined ? none : formatNumber(value, digits).replace('-', '−');
}

/** A number with a fixed count of decimals, for columns; a dash when there is none. */
export function fixed(value: Figure, decimals: number): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return none;
  return value
    .toFixed(decimals)
    .replace(/^-(?=0(\.0*)?$)/, '')
    .replace('-', '−');
}

/** A quantity in the unit a person reads. */
export interface Reading {
  unit: string;
  /** The number alone, from an SI value. */
  show(value: Figure): string;
  /** How a drawn value without end reads, where `∞` would say too little. */
  endless?: string;
}

/** A reading that also gives the bare number, as charts want it. */
export interface DisplayReading extends Reading {
  valueOf(si: number): number;
}

/** A reading with so many significant digits. */
function precise(dimension: Dimension, unit: string, digits = 3): DisplayReading {
  return {
    unit,
    valueOf: unitOf(unit, dimension).fromSi,
    show: (value) => number(inUnit(value, dimension, unit), digits),
  };
}

/** A reading with so many decimals. */
function rounded(dimension: Dimension, unit: string, decimals = 0): DisplayReading {
  const isZero = (value: Figure) => value === 0 && dimension !== 'temperature';
  return {
    unit,
    valueOf: unitOf(unit, dimension).fromSi,
    show: (value) => (isZero(value) ? '0' : fixed(inUnit(value, dimension, unit), decimals)),
  };
}

/** A run as long as the longest that is followed has only not ended by then: `>43200`. */
function upToLongestRun(reading: DisplayReading): DisplayReading {
  const past = `>${reading.show(longestRunS)}`;
  return {
    ...reading,
    show: (value) => (typeof value === 'number' && value >= longestRunS ? past : reading.show(value)),
  };
}

function inUnit(value: Figure, dimension: Dimension, unit: string): Figure {
  return value === null || value === undefined ? value : unitOf(unit, dimension).fromSi(value);
}

/** What is mechanical or warm is read in the units that were asked for. */
export interface DisplayReadings {
  mass: DisplayReading;
  /** Of something whole, in short. */
  largeMass: DisplayReading;
  length: DisplayReading;
  /** Room that something takes, and a gap for a hand. */
  reach: DisplayReading;
  gap: DisplayReading;
  speed: DisplayReading;
  force: DisplayReading;
  torque: DisplayReading;
  temperature: DisplayReading;
  /** Voltage of a motor by its speed, turning or along a line. */
  turningConstant: Reading;
  drivingConstant: Reading;
}

/** Units of columns, tables and charts in each system. */
export const displayReadings: Record<UnitSystem, DisplayReadings> = {
  metric: {
    mass: rounded('mass', 'g'),
    largeMass: precise('mass', 'kg', 2),
    length: rounded('length', 'mm'),
    reach: rounded('length', 'm', 2),
    gap: rounded('length', 'cm'),
    speed: precise('speed', 'm/s', 2),
    force: precise('force', 'N', 2),
    torque: precise('torque', 'N·m'),
    temperature: rounded('temperature', '°C'),
    turningConstant: { unit: 'V·s/rad', show: number },
    drivingConstant: { unit: 'V·s/m', show: number },
  },
  us: {
    mass: rounded('mass', 'oz', 1),
    largeMass: precise('mass', 'lb', 2),
    length: rounded('length', 'in', 2),
    reach: rounded('length', 'ft', 1),
    gap: rounded('length', 'in', 1),
    speed: precise('speed', 'ft/s', 2),
    force: precise('force', 'lbf', 2),
    torque: precise('torque', 'oz·in'),
    temperature: rounded('temperature', '°F'),
    turningConstant: { unit: 'V·s/rad', show: number },
    drivingConstant: { unit: 'V·s/in', show: (value) => number(value && value * inchM) },
  },
};

/** Whether a quantity is read in the units that were asked for. */
export function isDisplayed(name: string): name is keyof DisplayReadings {
  return Object.hasOwn(displayReadings.metric, name);
}

/** Units of columns and tables that are the same in every system, each with how its numbers are written. */
export const readings = {
  minutes: upToLongestRun(rounded('time', 'min')),
  hours: precise('time', 'h', 2),
  seconds: precise('time', 's'),
  amperes: precise('current', 'A'),
  milliamperes: rounded('current', 'mA'),
  watts: precise('power', 'W'),
  wattsInColumn: { unit: 'W', show: (value: Figure) => (value === 0 ? '0' : fixed(value, 2)) },
  joules: precise('energy', 'J'),
  joulesInShort: precise('energy', 'J', 2),
  volts: precise('voltage', 'V'),
  ohms: precise('resistance', 'Ω'),
  wattHours: precise('energy', 'Wh'),
  percent: rounded('ratio', '%'),
  decibels: { unit: 'dB', show: (value: Figure) => fixed(value, 0) },
  ratio: { unit: '', show: (value: Figure) => fixed(value, 2) },
  money: { unit: '', show: (value: Figure) => fixed(value, 0) },
} satisfies Record<string, Reading>;

/** Name of a way to show a figure. */
export type ReadingName = keyof typeof readings;

/** A reading by its name, or as it stands. */
export function readingOf(reading: ReadingName | Reading): Reading {
  return typeof reading === 'string' ? readings[reading] : reading;
}

/** A figure with its unit: `3.24 N·m`, `71 °C`; a dash when there is none. */
export function withReading(value: Figure, reading: ReadingName | Reading): string {
  const { unit, show } = readingOf(reading);
  return withUnit(show(value), unit);
}

/** A time as people say it, at most the longest run that is followed: `0.6 s`, `45 s`, `141 min`, `11 h 05 min`; a dash when it does not occur. */
export function duration(value: Figure): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return none;
  if (value >= longestRunS) return `over${joined}${withUnit(fixed(longestRunS / 3600, 0), 'h')}`;
  if (value < 119.5) return withUnit(value < 9.95 ? number(value, 2) : fixed(value, 0), 's');
  const minutes = inUnit(value, 'time', 'min')!;
  if (minutes < 599.5) return withUnit(minutes < 9.95 ? number(minutes, 2) : fixed(minutes, 0), 'min');
  const whole = Math.round(minutes);
  return [Math.floor(whole / 60), 'h', String(whole % 60).padStart(2, '0'), 'min'].join(joined);
}

/** A current: milliamperes below 100 mA. */
export function current(value: Figure): string {
  const isSmall = Boolean(value) && Math.abs(value!) < 0.0995;
  return withReading(value, isSmall ? 'milliamperes' : 'amperes');
}

/** An amount with its currency: `45 EUR`; without a currency the bare number. */
export function money(value: Figure, currency: string): string {
  return withUnit(readings.money.show(value), currency);
}

function withUnit(text: string, unit: string): string {
  return text === none || unit === '' ? text : `${text}${joined}${unit}`;
}

/** A hyphen before a figure is a minus sign. */
export function trueMinus(text: string): string {
  return text.replace(/(?<=^|[\s([=])-(?=\d)/g, '−');
}

/** `1 limit`, `3 limits`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count}${joined}${count === 1 ? one : many}`;
}

/** The text as a sentence: a capital first letter and a full stop. */
export function sentence(text: string): string {
  return capitalised(stopped(text));
}

/** The text with a full stop, and its first letter as it is: it may be that of a name. */
export function stopped(text: string): string {
  return text === '' || /[.!?]$/.test(text) ? text : `${text}.`;
}

/** The text with a capital first letter. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
