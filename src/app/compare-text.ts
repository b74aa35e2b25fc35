import type { DecisionRecord } from '../archive/record.js';
import { printable, quoted } from '../problem/printable.js';
import type { Comparison } from './compare.js';
import { answerLines } from './compare-answer.js';
import { effectLines } from './compare-table.js';
import { allKeyFigures, differs, type RecordedCandidate } from './records-figures.js';
import { wrapped } from './wrap.js';

/** What `compare` says. */
export function comparisonText(comparison: Comparison, width: number): string {
  const { decisions, candidate } = comparison;
  return [
    ...decisionLines(decisions.earlier, width),
    ...decisionLines(decisions.later, width),
    '',
    ...(candidate === null
      ? ['The two have no candidate in common.']
      : effectLines(comparison, candidate, width)),
    '',
    ...answerLines(comparison, width),
    ...programLines(comparison, width),
  ].join('\n');
}

function decisionLines(record: DecisionRecord, width: number): string[] {
  const { id, decision, choice, because } = record;
  return wrapped(printable(`${id}: ${decision} ${choice.label}: “${quoted(because, 300)}”`), width, '', '  ');
}

/** What moved although the inputs did not: figures that were filed otherwise than they are computed now. */
function programLines({ decisions, filed, explained, candidate }: Comparison, width: number): string[] {
  if (candidate === null) return [];
  const parts = [
    { decision: decisions.earlier, results: filed.earlier, standing: explained.earlier },
    { decision: decisions.later, results: filed.later, standing: explained.later },
  ];
  return parts.flatMap(({ decision, results, standing }) => {
    const of = (candidates: readonly RecordedCandidate[]) => candidates.find(({ id }) => id === candidate.id);
    const [before, after] = [results && of(results.candidates), of(standing.candidates)];
    if (!before || after === undefined) return [];
    // A record without draws has no medians and another score; what it has is compared as it stands.
    const isDrawn = before.leadProbability !== null;
    const now = isDrawn ? after : { ...after, uncertain: {}, score: before.score };
    const moved = allKeyFigures.filter(
      ({ read }) => read(before) !== null && differs(read(before), read(now)),
    );
    if (moved.length === 0) return [];
    const figures = moved.map(({ name, read, show }) => `${name} ${show(read(before)!)}`);
    const text = `${decision.id} was filed by version ${decision.version}, model ${decision.modelVersion}, with ${figures.join(', ')}.`;
    return wrapped(printable(text), width, '', '  ');
  });
}

/** The same for programs. */
export function comparisonData({ explained, ...comparison }: Comparison): object {
  const { singles, ...others } = explained;
  const changes = singles.map(({ change: { name, kind, earlier, later }, ...effect }) => {
    return { name, kind, earlier, later, ...effect };
  });
  return { ...comparison, ...others, changes };
}
