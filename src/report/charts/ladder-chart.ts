import type { RatedChange } from '../../assess/certainty.js';
import { labelOf, type ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { gain, gainWithUnit } from '../words/bands.js';
import { fixed, none } from '../words/figures.js';
import { brokenLabel, chartContent } from './chart-content.js';

/**
 * The score that every lesser change gains over today, against what the candidate that leads has over it. The median
 * gain may be larger than what is left to the full score by the nominal figures, so no score is read off.
 */
export function ladderChart(context: ReportContext): ChartContent | null {
  const { lesserChanges, lesserChangesFrom } = context.assessment;
  if (lesserChanges.length === 0 || lesserChangesFrom === null) return null;
  const before = lesserChangesFrom.before.score;
  const { leader } = context;
  const goal = leader && leader.id !== lesserChangesFrom.candidate ? leader.score - before : null;
  const rows = lesserChanges.map(rung);
  const lines = [
    { score: 0, label: `today ${fixed(before, 2)}` },
    ...(goal === null ? [] : [{ score: goal, label: `${labelShort(context)} ${gain(null, goal, 'ratio')}` }]),
  ];
  const ends = [
    0,
    ...(goal === null ? [] : [goal]),
    ...rows.flatMap((row) => [row.low, row.high, row.score]),
  ];
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const span = Math.max(most - least, 0.05);
  const close = goal !== null && Math.abs(goal) < span * 0.3;
  const values = {
    rows,
    lines: lines.map((line, index) => ({
      ...line,
      align: close
        ? line.score === Math.min(...lines.map(({ score }) => score))
          ? 'right'
          : 'left'
        : 'center',
      index,
    })),
    ticks: scoreTicks(least, most),
    domain: [least - span * 0.06, most + span * 0.7],
    narrow_domain: [least - span * 0.06, most + span],
  };
  const alternative = ladderFinding(context);
  const aspectRatio = 0.09 + 0.042 * rows.length;
  return chartContent(context, { name: 'lesser-changes', values, alternative, aspectRatio });
}

/** Round gains within the chart; beyond them stand only notes. */
function scoreTicks(least: number, most: number): number[] {
  const step = most - least > 0.5 ? 0.2 : most - least > 0.2 ? 0.1 : 0.05;
  const first = Math.ceil(least / step - 1e-9);
  const count = Math.floor(most / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) =>
    Number(((first + index) * step).toFixed(2)),
  );
}

/** What each change adds to the score of today, by the nominal figures. */
function ladderFinding(context: ReportContext): string {
  const { lesserChanges, lesserChangesFrom } = context.assessment;
  if (lesserChangesFrom === null) return none;
  return context.phrases('ladder-finding', {
    candidate: labelOf(context, lesserChangesFrom.candidate),
    before: fixed(lesserChangesFrom.before.score, 2),
    each: lesserChanges.map((change) => `${change.title} ${fixed(change.after.score, 2)}`).join('; '),
  });
}

function labelShort(context: ReportContext): string {
  return context.leader === null ? '' : `rank ${context.leader.rank}`;
}

function rung(change: RatedChange, index: number) {
  const band = change.gainBands?.score ?? null;
  const score = band?.median ?? change.gain.score;
  const marks = [
    gainWithUnit(change.gainBands?.runtimeS, change.gain.runtimeS, 'minutes'),
    change.passes === false ? '✗ fails' : '',
  ];
  return {
    label: brokenLabel(change.title, 40),
    order: index,
    from: 0,
    score,
    low: band?.p10 ?? score,
    high: band?.p90 ?? score,
    isPair: change.id === 'pair',
    passes: change.passes !== false,
    note: `${gain(null, score, 'ratio')}, ${marks.filter((mark) => mark !== '').join(' ')}`,
  };
}
