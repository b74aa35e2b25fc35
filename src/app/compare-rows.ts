import type { Study } from '../study/study.js';
import type { StudyChange } from './compare-changes.js';
import { plainText } from './compare-tree.js';

/** Parts of a study that are lists of rows. */
type Rows = 'candidates' | 'loads' | 'criteria' | 'day' | 'measured';

/** A list of a study whose rows are compared one by one. */
interface RowList<Part extends Rows> {
  part: Part;
  /** What a row goes by; made unique where several go by the same. */
  keyOf(row: Study[Part][number]): string;
  nameOf(key: string): string;
  /** A row in a few words. */
  words(row: Study[Part][number], study: Study): string;
  reach: StudyChange['reach'];
}

/** One change for each row that came, went, or says something else. */
export function rowChanges<Part extends Rows>(
  earlier: Study,
  later: Study,
  { part, keyOf, nameOf, words, reach }: RowList<Part>,
): StudyChange[] {
  const [before, after] = [keyed(earlier[part], keyOf), keyed(later[part], keyOf)];
  return mergedOrder([...before.keys()], [...after.keys()]).flatMap((key) => {
    const [old, next] = [before.get(key), after.get(key)];
    if (plainText(old) === plainText(next)) return [];
    const told = (row: Study[Part][number] | undefined, study: Study) =>
      row === undefined ? 'none' : words(row, study);
    const [from, to] = [told(old, earlier), told(next, later)];
    const change: StudyChange = {
      name: nameOf(key),
      kind: 'part',
      earlier: from,
      later: from === to ? 'changed' : to,
      candidate: null,
      reach,
      apply: (study) => withRow(study, later, part, keyOf, key),
    };
    return [change];
  });
}

/** The study with one row of a list as in another study, in the place that it has there. */
export function withRow<Part extends Rows>(
  study: Study,
  other: Study,
  part: Part,
  keyOf: (row: Study[Part][number]) => string,
  key: string,
): Study {
  const [rows, wanted] = [keyed(study[part], keyOf), keyed(other[part], keyOf)];
  const list = mergedOrder([...rows.keys()], [...wanted.keys()]).flatMap(
    (entry) => (entry === key ? wanted : rows).get(entry) ?? [],
  );
  return { ...study, [part]: list };
}

/** Rows by what they go by; the second of a name has a number behind it. */
function keyed<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row> {
  const found = new Map<string, Row>();
  for (const row of rows) {
    let [key, count] = [keyOf(row), 1];
    while (found.has(key)) key = `${keyOf(row)} ${++count}`;
    found.set(key, row);
  }
  return found;
}

/** Keys of both lists, each once: those of the first in their order, the others behind their neighbours. */
export function mergedOrder(before: readonly string[], after: readonly string[]): string[] {
  const merged = [...before];
  after.forEach((key, index) => {
    if (merged.includes(key)) return;
    const neighbour = merged.indexOf(after[index - 1] ?? '');
    merged.splice(neighbour + 1, 0, key);
  });
  return merged;
}
