import { printable } from '../problem/printable.js';
import { formatNumber } from '../quantity/format.js';
import type { Provenance } from '../study/provenance.js';
import type { Study } from '../study/study.js';
import { criterionChanges, cueWords, exchanged, idsOf, listChange, packChange } from './compare-parts.js';
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
  /** Whether what a candidate does may move with it; else only what that is worth. */
  movesRuns: boolean;
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
  const isOtherPack = earlier.pack.id !== later.pack.id;
  const parts = comparedParts.filter((part) => part !== 'pack' || !isOtherPack);
  return [
    ...parts.flatMap((part) => treeChanges(earlier, later, [part])),
    ...(isOtherPack ? [packChange(earlier, later)] : []),
    ...entryChanges(earlier, later, 'loads', 'load', () => 'there'),
    ...listChange('cue list', earlier, later, 'show', cueWords),
    ...entryChanges(earlier, later, 'candidates', 'candidate', ({ kind }) => kind),
    ...criterionChanges(earlier, later),
    ...listChange('event day', earlier, later, 'day', ({ day }) => `${day.length} blocks`),
    ...listChange(
      'measurements',
      earlier,
      later,
      'measured',
      ({ measured }) => `${measured.length} readings`,
    ),
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
): StudyChange[] {
  const leaf = (next ?? old)!;
  const [before, after] = [historyOf(earlier, key), historyOf(later, key)];
  const history = after ?? before;
  const [list, owner] = leaf.path as [string, string | undefined];
  const bare = leaf.path.length > 2 ? `${leaf.path.at(-1)} of ${owner}` : key;
  return [
    {
      name: history === undefined ? bare : inputName(history),
      kind: 'value',
      earlier: shown(old, before),
      later: shown(next, after),
      candidate: list === 'candidates' ? owner! : null,
      movesRuns: true,
      apply: (study) => withHistory(withLeaf(study, leaf.path, next), key, after),
    },
  ];
}

function historyOf({ provenance }: Study, path: string): Provenance | undefined {
  return provenance.find((entry) => entry.path === path);
}

function shown(leaf: Leaf | undefined, history: Provenance | undefined): string {
  if (leaf === undefined) return 'not there';
  if (leaf.value === null) return 'not known';
  if (history !== undefined && history.shown !== '') return printable(history.shown);
  if (typeof leaf.value === 'number') return formatNumber(leaf.value);
  if (typeof leaf.value === 'boolean') return leaf.value ? 'yes' : 'no';
  if (typeof leaf.value === 'string') return printable(leaf.value);
  return (leaf.value as { id?: string }).id ?? 'another';
}

/** The study with the history of one value replaced, so that its spread comes along. */
function withHistory(study: Study, path: string, history: Provenance | undefined): Study {
  const others = study.provenance.filter((entry) => entry.path !== path);
  return { ...study, provenance: history === undefined ? others : [...others, history] };
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
  return idsOf(entries(earlier), entries(later)).flatMap((id) => {
    const find = (study: Study) => entries(study).find((entry) => entry.id === id);
    const [old, next] = [find(earlier), find(later)];
    const [before, after] = [old, next].map((entry) => (entry === undefined ? 'not there' : kindOf(entry)));
    if (before === after) return treeChanges(earlier, later, [part, id]);
    const change: StudyChange = {
      name: `${word} ${id}`,
      kind: 'part',
      earlier: before!,
      later: after!,
      candidate: part === 'candidates' ? id : null,
      movesRuns: true,
      apply: (study) => ({ ...study, [part]: exchanged(entries(study), id, next) }),
    };
    return [change];
  });
}

/** Values that stayed and are known better or worse. */
function spreadChanges(earlier: Study, later: Study): StudyChange[] {
  return later.provenance.flatMap((after) => {
    const before = historyOf(earlier, after.path);
    if (before === undefined || before.value !== after.value) return [];
    if (JSON.stringify(before.spread) === JSON.stringify(after.spread)) return [];
    const change: StudyChange = {
      name: inputName(after),
      kind: 'spread',
      earlier: printable(before.shown),
      later: printable(after.shown),
      candidate: null,
      movesRuns: false,
      apply: (study) => withHistory(study, after.path, after),
    };
    return [change];
  });
}
