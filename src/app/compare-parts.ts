import { formatNumber } from '../quantity/format.js';
import type { Criterion } from '../study/choosing.js';
import type { Study } from '../study/study.js';
import type { StudyChange } from './compare-changes.js';
import { plainText } from './compare-tree.js';

/** Another pack of the same list, or of another. */
export function packChange(earlier: Study, later: Study): StudyChange {
  return {
    name: 'pack.choice',
    kind: 'value',
    earlier: earlier.pack.id,
    later: later.pack.id,
    candidate: null,
    movesRuns: true,
    apply: (study) => ({ ...study, pack: later.pack, packs: later.packs }),
  };
}

/** A part that is compared and exchanged as a whole. */
export function listChange(
  name: string,
  earlier: Study,
  later: Study,
  part: 'show' | 'day' | 'measured',
  describe: (study: Study) => string,
): StudyChange[] {
  if (plainText(earlier[part]) === plainText(later[part])) return [];
  const movesRuns = part === 'show';
  const [before, after] = [describe(earlier), describe(later)];
  return [
    {
      name,
      kind: 'part',
      earlier: before,
      later: before === after ? 'changed' : after,
      candidate: null,
      movesRuns,
      apply: (study) => ({ ...study, [part]: later[part] }),
    },
  ];
}

/** A cue list in a few words. */
export function cueWords({ show }: Study): string {
  const seconds = show.loop.reduce((sum, { durationS }) => sum + durationS, 0);
  return `${show.loop.length} cues, ${formatNumber(seconds)} s`;
}

/** Criteria that came, went, or count otherwise. */
export function criterionChanges(earlier: Study, later: Study): StudyChange[] {
  return idsOf(earlier.criteria, later.criteria).flatMap((id) => {
    const old = earlier.criteria.find((entry) => entry.id === id);
    const next = later.criteria.find((entry) => entry.id === id);
    if (plainText(old) === plainText(next)) return [];
    const change: StudyChange = {
      name: `criterion ${id}`,
      kind: 'part',
      earlier: criterionWords(old),
      later: criterionWords(next),
      candidate: null,
      movesRuns: false,
      apply: (study) => ({ ...study, criteria: exchanged(study.criteria, id, next) }),
    };
    return [change];
  });
}

function criterionWords(criterion: Criterion | undefined): string {
  if (criterion === undefined) return 'not there';
  const limit = criterion.must === null ? '' : `, must (${formatNumber(criterion.must.bound)})`;
  return `weight ${formatNumber(criterion.weightScore)}${limit}`;
}

/** Ids of all entries, each once. */
export function idsOf(...lists: { id: string }[][]): string[] {
  return [...new Set(lists.flat().map(({ id }) => id))];
}

/** The list with the entry of this id as given, or without it. */
export function exchanged<T extends { id: string }>(
  list: readonly T[],
  id: string,
  next: T | undefined,
): T[] {
  const others = list.filter((entry) => entry.id !== id);
  return next === undefined ? others : [...others, next];
}
