import { driveTypes } from '../../src/drives/registry.js';
import { csvLine, csvText } from '../../src/input/csv-text.js';
import { type FileRole, type InputFile, roleOf } from '../../src/input/files.js';
import { recordsOf } from '../../src/input/records.js';
import type { FieldDeclaration } from '../../src/quantity/field.js';
import { criterionFields, measuredFields } from '../../src/study/choosing-fields.js';
import { studyColumns, studyFields } from '../../src/study/fields.js';
import { dayFields, showFields } from '../../src/study/show-fields.js';
import { loadFields, packFields } from '../../src/study/supply-fields.js';
import { demoFile, demoFiles } from '../app/demo.js';

/** Every column of every file, from the field tables. */
const columns: Record<FileRole, readonly FieldDeclaration[]> = {
  study: studyColumns,
  candidates: Object.values(driveTypes).flatMap((type) => type.columns),
  show: showFields('hinge'),
  packs: packFields,
  loads: loadFields,
  criteria: criterionFields,
  day: dayFields,
  measured: measuredFields,
};

/** Texts that are read as numbers, units or names of items: hostile ones are refused like any other word. */
const readAsValues = ['item', 'value', 'unit', 'worth_0_at', 'worth_1_at', 'must'];

/** Columns that hold free text, with the most characters that each takes; one of the user's own among them. */
export function textColumns(role: FileRole): { name: string; longest: number }[] {
  const texts = columns[role].filter(({ kind, name }) => kind === 'text' && !readAsValues.includes(name));
  const own = { name: 'my_shelf', longest: 2000 };
  return [...new Map([...texts, own].map(({ name, longest }) => [name, { name, longest }])).values()];
}

/** Columns that hold ids. */
export function idColumns(role: FileRole): string[] {
  return [...new Set(columns[role].filter(({ kind }) => kind === 'name').map(({ name }) => name))];
}

/** The demo with every optional file, as few draws as give bands. */
export function wholeDemo(): InputFile[] {
  const readings = { name: 'measured.csv', bytes: demoFile('lantern-parade', 'measured.csv.example') };
  return [...demoFiles('lantern-parade'), readings].map((file) =>
    file.name === 'study.csv' ? withRow(file, 'draws,64,,') : file,
  );
}

function withRow({ name, bytes }: InputFile, row: string): InputFile {
  return { name, bytes: new TextEncoder().encode(`${new TextDecoder().decode(bytes).trimEnd()}\n${row}\n`) };
}

/** The demo with a text in every cell that takes one, cut to what the cell takes. */
export function poisoned(text: string): InputFile[] {
  return wholeDemo().map((file) => withTexts(file, () => text));
}

/** A file with a text in every cell of its text columns; in study.csv, in the value of every text item too. */
export function withTexts(file: InputFile, textFor: (column: string) => string): InputFile {
  const role = roleOf(file.name)!;
  const texts = textColumns(role);
  const [header, ...rows] = rowsOf(file);
  const names = [...header!, ...texts.map(({ name }) => name).filter((name) => !header!.includes(name))];
  const lines = rows.map((row) => {
    const cells = names.map((_, index) => row[index] ?? '');
    for (const { name, longest } of texts) cells[names.indexOf(name)] = cut(textFor(name), longest);
    return role === 'study' ? withItemText(cells, names, textFor) : cells;
  });
  return { name: file.name, bytes: new TextEncoder().encode(csvText([names, ...lines].map(csvLine))) };
}

/** The cells of a file, comments left out. */
export function rowsOf(file: InputFile): string[][] {
  const text = new TextDecoder().decode(file.bytes);
  return recordsOf(text, ',', file.name, () => {})!.map(({ cells }) => cells);
}

function withItemText(cells: string[], names: string[], textFor: (column: string) => string): string[] {
  const item = cells[names.indexOf('item')]!;
  const field = studyFields('hinge').find(({ name }) => name === item);
  if (field?.kind !== 'text') return cells;
  return cells.with(names.indexOf('value'), cut(textFor(item), field.longest));
}

/** At most so many characters, and no half of one at the end. */
const cut = (text: string, longest: number): string => text.slice(0, longest).replace(/[\ud800-\udbff]$/, '');
