import type { ReportContext } from '../context.js';
import type { ChartContent } from '../template/fill-template.js';
import { probability } from '../words/bands.js';
import { none } from '../words/figures.js';
import { chartContent, rowLabel, titleLines } from './chart-content.js';

/** Ranks that are told apart; the others are one part. */
const namedRanks = 4;

/** A part narrower than this has no room for its number. */
const leastWritten = 0.055;

/** How often each candidate comes at which rank over draws and random weights; null without them. */
export function acceptabilityChart(context: ReportContext): ChartContent | null {
  const drawn = context.candidates.filter(({ acceptability }) => acceptability.length > 0);
  if (drawn.length === 0) return null;
  const rows = drawn.flatMap((candidate) => {
    const label = rowLabel(candidate);
    let from = 0;
    return rankShares(candidate.acceptability).map(({ part, share, order }) => {
      const row = { label, part, order, from, to: from + share * 100, middle: from + share * 50, note: '' };
      from = row.to;
      return {
        ...row,
        dark: order < 2,
        note: share >= leastWritten ? probability(share).replace(/\D*$/, '') : '',
      };
    });
  });
  const parts = [...new Set(rows.map(({ part }) => part))];
  const title = context.phrases(`acceptability-axis-${weightsDrawn(context)}`);
  const values = { rows, parts, title, title_lines: titleLines(title) };
  const alternative = acceptabilityFinding(context);
  const aspectRatio = 0.1 + 0.03 * drawn.length;
  return chartContent(context, { name: 'rank-acceptability', values, alternative, aspectRatio });
}

/** How often each comes first. */
export function acceptabilityFinding(context: ReportContext): string {
  const drawn = context.candidates.filter(({ acceptability }) => acceptability.length > 0);
  if (drawn.length === 0) return none;
  const each = drawn.map(({ label, acceptability }) => `${label} ${probability(acceptability[0])}`);
  return context.phrases('acceptability-finding', { each: each.join(', ') });
}

/** From which weights the shares come. */
function weightsDrawn(context: ReportContext): 'any' | 'in-order' {
  return context.assessment.certainty?.weightsDrawn ?? 'any';
}

function rankShares(acceptability: number[]) {
  const named = acceptability.slice(0, namedRanks);
  const rest = acceptability.slice(namedRanks).reduce((sum, share) => sum + share, 0);
  const names = ['first', 'second', 'third', 'fourth'];
  const shares = named.map((share, index) => ({ part: names[index]!, share, order: index }));
  return acceptability.length > namedRanks
    ? [...shares, { part: 'further down', share: rest, order: namedRanks }]
    : shares;
}
