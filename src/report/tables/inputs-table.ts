import type { Provenance } from '../../study/provenance.js';
import { labelOf, type ReportContext } from '../context.js';
import type { Block, TableBlock, TableRow } from '../document.js';
import { none } from '../words/figures.js';
import { inputName, withCurrency } from '../words/outcome-words.js';
import { cell, groupRow, row, wordColumn } from './cells.js';

/** A basis that several figures share is said once, in a numbered note. */
const sharedFrom = 3;

/** A short basis stays in its row however often it occurs. */
const shortBasis = 34;

/** Every figure of the study as it was read or taken, in groups by what it belongs to, and the notes below. */
export function inputsTable(context: ReportContext): Block[] {
  const { provenance } = context.assessment.study;
  const notes = sharedBases(provenance);
  const groups = new Map<string, Provenance[]>();
  for (const entry of provenance) {
    const title = groupTitle(context, entry);
    groups.set(title, [...(groups.get(title) ?? []), entry]);
  }
  const table: TableBlock = {
    kind: 'table',
    title: '',
    columns: [
      wordColumn('Figure', 1.7),
      wordColumn('Origin', 0.75),
      wordColumn('As written', 1.7),
      wordColumn('Read as', 1.7),
      wordColumn('Where, or why', 2.9),
    ],
    rows: [...groups].flatMap(([title, entries]) => [
      groupRow(title),
      ...entries.map((entry) => inputRow(context, entry, notes)),
    ]),
    note: [],
    rowHeads: true,
    compact: true,
  };
  if (notes.length === 0) return [table];
  const heading: Block = {
    kind: 'heading',
    level: 3,
    text: context.phrases('input-notes'),
    id: 'input-notes',
  };
  return [
    table,
    heading,
    { kind: 'list', ordered: true, items: notes.map((text) => [{ text }]), style: 'small' },
  ];
}

/** Bases worth a note, in the order in which they first occur. */
function sharedBases(provenance: Provenance[]): string[] {
  const counts = new Map<string, number>();
  for (const { basis } of provenance) counts.set(basis, (counts.get(basis) ?? 0) + 1);
  return [...counts]
    .filter(([basis, count]) => basis.length > shortBasis && count >= sharedFrom)
    .map(([basis]) => basis);
}

function inputRow(context: ReportContext, entry: Provenance, notes: string[]): TableRow {
  const { place, basis, origin, field } = entry;
  const where = place ? `${place.file}${place.line === null ? '' : `:${place.line}`}` : '';
  const note = notes.indexOf(basis) + 1;
  const why = note > 0 ? context.phrases('input-note', { number: String(note) }) : basis;
  const written = withCurrency(field, entry.written ?? none, context.currency);
  const shown = withCurrency(field, entry.shown, context.currency);
  const isRepeated = written.length > 40 && written === shown;
  return row(
    cell(inputName(entry, context.assessment.study.provenance)),
    origin === 'given' ? cell('given') : { text: [{ text: origin, emphasis: true }] },
    cell(written),
    isRepeated ? cell(context.phrases('input-as-written'), 'muted') : cell(shown === '' ? none : shown),
    cell([where, why].filter((part) => part !== '').join(', '), 'muted'),
  );
}

const groupNames: Record<string, string> = {
  feature: 'Feature',
  carrier: 'Carrier',
  air: 'Air',
  space: 'Space for one drive',
  wiring: 'Wire, fuse, protection',
  pack: 'Pack',
  packs: 'Packs',
  loads: 'Loads',
  show: 'Cue list',
  criteria: 'Criteria',
  day: 'Day',
  measured: 'Measured',
};

function groupTitle(context: ReportContext, { path, owner }: Provenance): string {
  const first = path.split(/[.[]/)[0]!;
  if (first === 'candidates') return `Candidate: ${labelOf(context, owner ?? path.split('.')[1] ?? '')}`;
  const name = groupNames[first] ?? 'Study';
  return owner === null || first === 'show' || first === 'criteria' ? name : `${name}: ${owner}`;
}
