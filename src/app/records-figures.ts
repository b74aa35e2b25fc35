import { amperes, celsius, mass, minutes, plain, watts } from '../assess/figures.js';
import type { NominalOutcome } from '../simulate/outcome.js';

/** The part of a candidate's results that records are compared by; older records may lack a figure. */
export interface RecordedCandidate {
  id: string;
  label: string;
  rank: number;
  passes: boolean | null;
  score: number;
  nominal: Partial<NominalOutcome>;
}

/** A figure by which results are compared. */
export interface KeyFigure {
  name: string;
  read(candidate: RecordedCandidate): number | null;
  /** With its unit. */
  show(value: number): string;
  /** A difference of two, with its unit and without its sign. */
  showSize(difference: number): string;
}

const figure = (
  name: string,
  key: keyof NominalOutcome,
  show: KeyFigure['show'],
  showSize = show,
): KeyFigure => ({ name, read: ({ nominal }) => finite(nominal[key]), show, showSize });

const fixed = (digits: number, unit: string, factor = 1) => {
  return (difference: number) => `${(difference * factor).toFixed(digits)} ${unit}`;
};

/** The figures by which results are compared, in the order in which they are told. */
export const keyFigures: readonly KeyFigure[] = [
  figure('runtime', 'runtimeS', minutes, fixed(1, 'min', 1 / 60)),
  figure('power while holding', 'holdPowerW', watts, fixed(2, 'W')),
  figure('mass on the body', 'bodyMassKg', mass, fixed(0, 'g', 1000)),
  figure('peak current', 'peakPackCurrentA', amperes, fixed(2, 'A')),
  figure('case temperature', 'caseTemperatureK', celsius, fixed(1, 'K')),
  figure('cost', 'cost', plain),
  {
    name: 'score',
    read: ({ score }) => finite(score),
    show: (score) => score.toFixed(3),
    showSize: (score) => score.toFixed(3),
  },
];

function finite(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

/** Whether two figures differ by more than the last digits of a computer. */
export function differs(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a !== b;
  return Math.abs(a - b) > 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1e-9);
}

/** `+12 min`, `−0.2 W`; `0` where nothing moved that shows. */
export function signed(difference: number, { showSize }: KeyFigure): string {
  const size = showSize(Math.abs(difference));
  if (Number.parseFloat(size) === 0) return '0';
  return `${difference < 0 ? '−' : '+'}${size}`;
}
