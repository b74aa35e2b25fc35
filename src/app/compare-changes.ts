import { printable } from '../problem/printable.js';
import { formatNumber } from '../quantity/format.js';
import type { Provenance } from '../study/provenance.js';
import type { Study } from '../study/study.js';
import { historyOf, respread, withHistories, withHistory, withSpreads } from './compare-histories.js';
import {
  criterionChanges,
  dayChanges,
  featureChange,
  packChange,
  readingChanges,
  showChanges,
} from './compare-parts.js';
import { mergedOrder, withRow } from './compare-rows.js';
import { type Leaf, leavesOf, type Path, withLeaf } from './compare-tree.js';
import { inputName } from './records-shown.js';

/** One thing that two studies say differently, and how to change one of them into the other in this respect. */
export interface StudyChange {
  /** As its maker knows it: `feature.mass`, `stall_torque of servo-now`, `cue list`. */
  name: string;
  /** `spread`: only how poorly it is known. */
  kind: 'value' | 'spread' | 'part';
  earlier: string;
  later: string;
  /** The only candidate it concerns; null when it may concern all. */
  candidate: string | null;
  /**
   * What moves with it: `runs`, what candidates do; `draws`, only how that is spread; `worth`, only what it is worth.
   */
  reach: 'runs' | 'draws' | 'worth';
  /** The earlier study with this one thing as in the later. */
  apply(study: Study): Study;
}

/** Parts of a study whose single figures are compared; lists of theirs go by the ids of their entries. */
const comparedParts = [
  'feature',
  'carrier',
  'air',
  'space',
  'wiring',
  'pack',
  'packsCarriedCount',
  'packTemperatureK',
  'targetRuntimeS',
  'eventsPerYearCount',
  'hourPriceMoney',
  'baselineId',
  'drawsCount',
  'seed',
] as const;

/** Everything in which two studies differ that could move a result, in the order of the study. */
export function studyChanges(earlier: Study, later: Study): StudyChange[] {
  const wholes = {
    feature: earlier.feature.kind === later.feature.kind ? null : featureChange(earlier, later),
    pack: earlier.pack.id === later.pack.id ? null : packChange(earlier, later),
  };
  const parts = comparedParts.flatMap((part) => {
    const whole = part === 'feature' || part === 'pack' ? wholes[part] : null;
    return whole ?? treeChanges(earlier, later, [part]);
  });
  return [
    ...parts,
    ...entryChanges(earlier, later, 'loads', 'load', () => 'there'),
    ...showChanges(earlier, later),
    ...entryChanges(earlier, later, 'candidates', 'candidate', ({ kind }) => kind),
    ...criterionChanges(earlier, later),
    ...dayChanges(earlier, later),
    ...readingChanges(earlier, later),
    ...spreadChanges(earlier, later),
  ];
}

/** Differences of single figures and choices below a path. */
function treeChanges(earlier: Study, later: Study, path: Path): StudyChange[] {
  const before = leavesOf(earlier, path);
  const after = leavesOf(later, path);
  const keys = [...new Set([...before.keys(), ...after.keys()])];
  return keys.flatMap((key) => {
    const [old, next] = [before.get(key), after.get(key)];
    if (JSON.stringify(old?.value) === JSON.stringify(next?.value)) return [];
    return leafChange(earlier, later, key, old, next);
  });
}

function leafChange(
  earlier: Study,
  later: Study,
  key: string,
  old: Leaf | undefined,
  next: Leaf | undefined,
): StudyChange {
  const leaf = (next ?? old)!;
  const [before, after] = [historyOf(earlier, key), historyOf(later, key)];
  const history = after ?? before;
  const [list, owner] = leaf.path as [string, string | undefined];
  const bare = leaf.path.length > 2 ? `${leaf.path.at(-1)} of ${owner}` : key;
  const changed = (study: Study) => withHistory(withLeaf(study, leaf.path, next), key, after);
  return {
    name: history === undefined ? bare : inputName(history),
    kind: 'value',
    earlier: shown(old, before),
    later: shown(next, after),
    candidate: list === 'candidates' ? owner! : null,
    reach: 'runs',
    apply: isSource(key) ? (study) => withSpreads(changed(study), later, ownerOf(key)) : changed,
  };
}

/** Whether a choice says where all figures of a drive or pack come from, and so how far they may be off. */
const isSource = (path: string): boolean => path.endsWith('.figuresFrom');

/** Path of the drive, load or pack that a value belongs to, with its last dot. */
const ownerOf = (path: string): string => /^(candidates|loads)\.[^.]+\.|^[^.]+\./.exec(path)?.[0] ?? path;

function shown(leaf: Leaf | undefined, history: Provenance | undefined): string {
  if (leaf === undefined) return 'not there';
  if (leaf.value === null) return 'not known';
  if (history !== undefined && history.shown !== '') return printable(history.shown);
  if (typeof leaf.value === 'number') return formatNumber(leaf.value);
  if (typeof leaf.value === 'boolean') return leaf.value ? 'yes' : 'no';
  if (typeof leaf.value === 'string') return printable(leaf.value);
  return (leaf.value as { id?: string }).id ?? 'another';
}

/** Differences of the entries of a list by their ids; one that came, went or is of another kind counts as a whole. */
function entryChanges<Part extends 'loads' | 'candidates'>(
  earlier: Study,
  later: Study,
  part: Part,
  word: string,
  kindOf: (entry: Study[Part][number]) => string,
): StudyChange[] {
  const entries = (study: Study) => study[part] as Study[Part][number][];
  const idsOf = (study: Study) => entries(study).map(({ id }) => id);
  return mergedOrder(idsOf(earlier), idsOf(later)).flatMap((id) => {
    const found = [earlier, later].map((study) => entries(study).find((entry) => entry.id === id));
    const [before, after] = found.map((entry) => (entry === undefined ? 'not there' : kindOf(entry)));
    if (before === after) return treeChanges(earlier, later, [part, id]);
    const change: StudyChange = {
      name: `${word} ${id}`,
      kind: 'part',
      earlier: before!,
      later: after!,
      candidate: part === 'candidates' ? id : null,
      reach: 'runs',
      apply: (study) =>
        withHistories(
          withRow(study, later, part, (entry) => entry.id, id),
          later,
          `${part}.${id}.`,
        ),
    };
    return [change];
  });
}

/** Values that stayed and are known better or worse, but where that follows from another source of all figures. */
function spreadChanges(earlier: Study, later: Study): StudyChange[] {
  const resourced = later.provenance
    .filter(({ path, value }) => isSource(path) && historyOf(earlier, path)?.value !== value)
    .map(({ path }) => ownerOf(path));
  return respread(earlier, later)
    .filter(({ path }) => !resourced.includes(ownerOf(path)))
    .map((after) => ({
      name: inputName(after),
      kind: 'spread',
      earlier: printable(historyOf(earlier, after.path)!.shown),
      later: printable(after.shown),
      candidate: null,
      reach: 'draws',
      apply: (study) => withHistory(study, after.path, after),
    }));
}
