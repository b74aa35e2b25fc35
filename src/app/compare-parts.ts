import { printable } from '../problem/printable.js';
import { formatNumber, formatQuantity, formatValue } from '../quantity/format.js';
import type { Criterion } from '../study/choosing.js';
import { criterionFacts } from '../study/choosing-fields.js';
import type { Study } from '../study/study.js';
import type { StudyChange } from './compare-changes.js';
import { historyOf, withHistories } from './compare-histories.js';
import { rowChanges } from './compare-rows.js';
import { plainText } from './compare-tree.js';

/** Another pack of the same list, or of another. */
export function packChange(earlier: Study, later: Study): StudyChange {
  return {
    name: 'pack.choice',
    kind: 'value',
    earlier: earlier.pack.id,
    later: later.pack.id,
    candidate: null,
    reach: 'runs',
    apply: (study) => withHistories({ ...study, pack: later.pack, packs: later.packs }, later, 'pack.'),
  };
}

/** Another way to move, which takes all that is said of the feature with it. */
export function featureChange(earlier: Study, later: Study): StudyChange {
  return {
    name: 'feature.motion',
    kind: 'part',
    earlier: earlier.feature.kind,
    later: later.feature.kind,
    candidate: null,
    reach: 'runs',
    apply: (study) => withHistories({ ...study, feature: later.feature }, later, 'feature.'),
  };
}

/** Another cue list: it counts as a whole, since a cue begins where the one before ends. */
export function showChanges(earlier: Study, later: Study): StudyChange[] {
  return wholeChange('cue list', earlier, later, 'show', 'runs', ({ show }) => {
    const seconds = show.loop.reduce((sum, { durationS }) => sum + durationS, 0);
    return `${show.loop.length} cues, ${formatNumber(seconds)} s`;
  });
}

/** Blocks of the event day that came, went, or last otherwise; the day as a whole where they changed places. */
export function dayChanges(earlier: Study, later: Study): StudyChange[] {
  const common = ({ day }: Study, other: Study) =>
    day.map(({ block }) => block).filter((name) => other.day.some(({ block }) => block === name));
  if (common(earlier, later).join('\n') !== common(later, earlier).join('\n'))
    return wholeChange('event day', earlier, later, 'day', 'worth', ({ day }) => `${day.length} blocks`);
  return rowChanges(earlier, later, {
    part: 'day',
    keyOf: ({ block }) => block,
    nameOf: (block) => `day, ${printable(block)}`,
    words: ({ durationS, activity }) => `${formatValue(durationS, 'min')} ${activity}`,
    reach: 'worth',
  });
}

/** Criteria that came, went, or count otherwise. */
export function criterionChanges(earlier: Study, later: Study): StudyChange[] {
  return rowChanges(earlier, later, {
    part: 'criteria',
    keyOf: ({ id }) => id,
    nameOf: (id) => `criterion ${id}`,
    words: criterionWords,
    reach: 'worth',
  });
}

function criterionWords({ id, weightScore, must }: Criterion): string {
  const weight = `weight ${formatNumber(weightScore)}`;
  if (must === null) return weight;
  const { dimension, habitualUnit } = criterionFacts[id];
  if (dimension === null) return `${weight}, must`;
  const bound = habitualUnit ? formatValue(must.bound, habitualUnit) : formatQuantity(must.bound, dimension);
  return `${weight}, must be ${must.direction.replace('-', ' ')} ${bound}`;
}

/** Readings of measured.csv that came, went, or are others: each makes the draws agree with it. */
export function readingChanges(earlier: Study, later: Study): StudyChange[] {
  return rowChanges(earlier, later, {
    part: 'measured',
    keyOf: ({ quantity }) => quantity,
    nameOf: (quantity) => `measured ${quantity}`,
    words: ({ quantity }, study) => historyOf(study, `measured.${quantity}.value`)?.shown ?? 'there',
    reach: 'draws',
  });
}

/** A part that is compared and exchanged as a whole. */
function wholeChange(
  name: string,
  earlier: Study,
  later: Study,
  part: 'show' | 'day',
  reach: StudyChange['reach'],
  describe: (study: Study) => string,
): StudyChange[] {
  if (plainText(earlier[part]) === plainText(later[part])) return [];
  const [before, after] = [describe(earlier), describe(later)];
  const change: StudyChange = {
    name,
    kind: 'part',
    earlier: before,
    later: before === after ? 'changed' : after,
    candidate: null,
    reach,
    apply: (study) => ({ ...study, [part]: later[part] }),
  };
  return [change];
}
