import type { CandidateAssessment } from '../../assess/assessment.js';
import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { current } from '../words/figures.js';
import { type MeasuredHold, measuredHold } from '../words/measured-hold.js';
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

const usedNote = ', used';

/** More drives would not fit beside the other chart; the rest stand on their own pages. */
const mostDrives = 3;

/** The three figures of the hold current side by side, the used one filled; null without such drives. */
export function holdCurrentChart(context: ReportContext): ChartContent | null {
  const holders = positionHolders(context);
  if (holders.length === 0) return null;
  const groups = holders
    .slice(0, mostDrives)
    .map((candidate) => figureRows(candidate, measuredHold(context, candidate)));
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
  const each = positionHolders(context).map((candidate) => {
    const { label, nominal } = candidate;
    return context.phrases('hold-current-figures', {
      candidate: label,
      linear: current(nominal.holdPackCurrentLinearRuleA),
      pulses: current(nominal.holdPackCurrentPulseModelA),
      measured: current(measuredHold(context, candidate)?.currentA),
      used: holdCurrentWords[nominal.holdCurrentUsed],
    });
  });
  return each.join(' ');
}

/** What the measured figures among them do to the result. */
export function measuredHoldWords(context: ReportContext): string {
  const uses = positionHolders(context).map((candidate) => measuredHold(context, candidate)?.use);
  const said = (['replaces', 'weights'] as const).filter((use) => uses.includes(use));
  return (said.length === 0 ? ['none'] : said)
    .map((use) => context.phrases(`hold-measured-${use}`, {}))
    .join(' ');
}

function figureRows({ id, rank, label, nominal }: CandidateAssessment, measured: MeasuredHold | null) {
  const figures = [
    { figure: 'linear rule', amperes: nominal.holdPackCurrentLinearRuleA, note: '' },
    {
      figure: 'pulse model',
      amperes: nominal.holdPackCurrentPulseModelA,
      note: nominal.holdCurrentUsed === 'pulse-model' ? usedNote : '',
    },
    {
      figure: 'measured',
      amperes: measured?.currentA ?? null,
      note: measured?.use === 'weights' ? ', weights the draws' : usedNote,
    },
  ];
  const name = brokenLabel(`${rank} ${label}`, 19);
  return figures.map(({ figure, amperes, note }) => ({
    // The parts behind the bars are axis labels: the drive's name beside the middle one of its figures, or above the first.
    key: `${id} ${figure}|${figure === 'pulse model' ? name : ''}|${figure === 'linear rule' ? name : ''}`,
    amperes: amperes ?? 0,
    used: note === usedNote && amperes !== null,
    note: amperes === null ? `not ${figure}` : `${figure} ${current(amperes)}${note}`,
  }));
}
