import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { current } from '../words/figures.js';
import { holdCurrentWords } from '../words/outcome-words.js';
import { brokenLabel, chartContent } from './chart-content.js';

/** Drives that hold their pose on pulses, for which three figures of the hold current compete. */
export function positionHolders(context: ReportContext): CandidateAssessment[] {
  return context.candidates.filter(
    ({ nominal }) =>
      ['pulse-model', 'measured'].includes(nominal.holdCurrentUsed) &&
      Number.isFinite(nominal.holdCurrentPulseModelA),
  );
}

/** More drives would not fit beside the other chart; the rest stand on their own pages. */
const mostDrives = 3;

/** The three figures of the hold current side by side, the used one filled; null without such drives. */
export function holdCurrentChart(context: ReportContext): ChartContent | null {
  const holders = positionHolders(context);
  if (holders.length === 0) return null;
  const groups = holders
    .slice(0, mostDrives)
    .map((candidate) => figureRows(candidate, readingOf(context, candidate)));
  // A row without a bar parts one drive from the next.
  const rows = groups.flat();
  const keys = groups.flatMap((group, index) => [...group.map((row) => row.key), ` ${index}||`]).slice(0, -1);
  const values = { rows, keys, domain_end: Math.max(0.01, ...rows.map((row) => row.amperes)) * 1.66 };
  const aspectRatio = Math.max(0.285, 0.04 + 0.08 * groups.length);
  const alternative = holdCurrentFinding(context);
  return chartContent(context, { name: 'hold-current-figures', values, alternative, aspectRatio });
}

/** Names the three figures of each drive and the one that the result uses. */
function holdCurrentFinding(context: ReportContext): string {
  const each = positionHolders(context).map(({ label, nominal }) =>
    context.phrases('hold-current-figures', {
      candidate: label,
      linear: current(nominal.holdCurrentLinearRuleA),
      pulses: current(nominal.holdCurrentPulseModelA),
      measured: current(nominal.holdCurrentMeasuredA),
      used: holdCurrentWords[nominal.holdCurrentUsed],
    }),
  );
  return each.join(' ');
}

/** What was read on the drive of today; the draws follow it. */
function readingOf({ assessment }: ReportContext, { isBaseline }: CandidateAssessment): number | null {
  const reading = assessment.study.measured.find(({ quantity }) => quantity === 'hold_current');
  return isBaseline ? (reading?.value ?? null) : null;
}

function figureRows({ id, rank, label, nominal }: CandidateAssessment, readingA: number | null) {
  const figures = [
    { figure: 'linear rule', amperes: nominal.holdCurrentLinearRuleA, used: false },
    {
      figure: 'pulse model',
      amperes: nominal.holdCurrentPulseModelA,
      used: nominal.holdCurrentUsed === 'pulse-model',
    },
    {
      figure: 'measured',
      amperes: nominal.holdCurrentMeasuredA ?? readingA,
      used: nominal.holdCurrentUsed === 'measured',
    },
  ];
  const name = brokenLabel(`${rank} ${label}`, 19);
  return figures.map(({ figure, amperes, used }) => ({
    // The parts behind the bars are axis labels: the drive's name beside the middle one of its figures, or above the first.
    key: `${id} ${figure}|${figure === 'pulse model' ? name : ''}|${figure === 'linear rule' ? name : ''}`,
    amperes: amperes ?? 0,
    used,
    note: noteOf(figure, amperes, used),
  }));
}

function noteOf(figure: string, amperes: number | null, used: boolean): string {
  if (amperes === null) return `not ${figure}`;
  const use = used ? ', used' : figure === 'measured' ? ', in the draws' : '';
  return `${figure} ${current(amperes)}${use}`;
}
