import type { Provenance } from '../../study/provenance.js';
import { labelOf, type ReportContext } from '../context.js';
import type { TableBlock, TableRow } from '../document.js';
import { none } from '../words/figures.js';
import { fieldWords } from '../words/outcome-words.js';
import { cell, groupRow, row, wordColumn } from './cells.js';

/** Every figure of the study as it was read or taken, in groups by what it belongs to. */
export function inputsTable(context: ReportContext): TableBlock {
  const groups = new Map<string, Provenance[]>();
  for (const entry of context.assessment.study.provenance) {
    const title = groupTitle(context, entry);
    groups.set(title, [...(groups.get(title) ?? []), entry]);
  }
  const rows = [...groups].flatMap(([title, entries]) => [groupRow(title), ...entries.map(inputRow)]);
  const columns = [
    wordColumn('Figure', 1.9),
    wordColumn('Origin', 0.8),
    wordColumn('As written', 1.6),
    wordColumn('Read as', 1.6),
    wordColumn('Where, or why', 2.7),
  ];
  return { kind: 'table', title: '', columns, rows, note: [], rowHeads: true, compact: true };
}

function inputRow(entry: Provenance): TableRow {
  const { place } = entry;
  const where = place ? `${place.file}${place.line === null ? '' : `, line ${place.line}`}` : '';
  const why = entry.basis === '' ? where : where === '' ? entry.basis : `${entry.basis} (${where})`;
  const isGiven = entry.origin === 'given';
  return row(
    cell(fieldWords(entry.owner === null ? entry.field.replace(/^[a-z]+\./, '') : entry.field)),
    isGiven ? cell('given') : { text: [{ text: entry.origin, emphasis: true }] },
    cell(entry.written ?? none),
    cell(entry.shown === '' ? none : entry.shown),
    cell(why, 'muted'),
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
