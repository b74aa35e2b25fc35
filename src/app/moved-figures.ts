import type { QuantityFigure } from '../archive/day-log.js';
import { printable } from '../problem/printable.js';
import { allKeyFigures, differs, type RecordedCandidate } from './records-figures.js';
import type { RecordedResults } from './records-results.js';
import { wrapped } from './wrap.js';

/** A key figure of a candidate that is not what it was. */
export interface MovedFigure {
  candidate: string;
  label: string;
  /** Name of a key figure. */
  figure: string;
  earlier: QuantityFigure;
  later: QuantityFigure;
}

/** Key figures that moved, of the candidates that are in both. */
export function movedFigures(earlier: RecordedResults, later: readonly RecordedCandidate[]): MovedFigure[] {
  return later.flatMap((candidate) => {
    const before = earlier.candidates.find(({ id }) => id === candidate.id);
    if (before === undefined) return [];
    const { id, label } = candidate;
    return allKeyFigures.flatMap(({ name, read }) => {
      const moved = { earlier: read(before), later: read(candidate) };
      return differs(moved.earlier, moved.later) ? [{ candidate: id, label, figure: name, ...moved }] : [];
    });
  });
}

/**
 * What moved in words: a head, then one paragraph for each candidate whose figures moved by more than is shown.
 * @param indent put before each line of a candidate
 */
export function movedFigureWords(
  figures: readonly MovedFigure[],
  width: number,
  indent: string,
): { head: string; lines: string[] } {
  if (figures.length === 0) return { head: 'nothing moved', lines: [] };
  const shown = figures.map(({ label, figure, earlier, later }) => {
    const { show } = allKeyFigures.find(({ name }) => name === figure)!;
    const [before, after] = [earlier, later].map((value) => (value === null ? '–' : show(value)));
    return { label, isSmall: before === after, text: `${figure} ${before} → ${after}` };
  });
  const large = shown.filter(({ isSmall }) => !isSmall);
  const small = shown.length - large.length;
  const rest = small === 0 ? '' : `${small} figure${small === 1 ? '' : 's'} moved by less than is shown`;
  const labels = [...new Set(large.map(({ label }) => label))];
  const lines = labels.flatMap((label) => {
    const moved = large.filter((figure) => figure.label === label).map(({ text }) => text);
    return wrapped(printable(`${label}: ${moved.join(', ')}`), width, `${indent}  `, `${indent}    `);
  });
  return { head: large.length === 0 ? rest : `moved${rest === '' ? '' : `; ${rest}`}`, lines };
}
