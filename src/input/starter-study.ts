import { driveKinds } from '../drives/columns.js';
import { driveTypes } from '../drives/registry.js';
import type { DriveKind } from '../drives/sheet.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { criterionFields, measuredFields } from '../study/choosing-fields.js';
import { studyFields } from '../study/fields.js';
import { dayFields, showFields } from '../study/show-fields.js';
import { loadFields, packFields } from '../study/supply-fields.js';
import { csvLine, csvText } from './csv-text.js';
import { commentLine } from './field-words.js';
import * as placeholders from './starter-placeholders.js';

/** A file of a starter study. */
export interface StarterFile {
  name: string;
  text: string;
}

const warning =
  '# Starter file. Every figure is an invented placeholder: replace it by your own, or empty it.';
const blankRule =
  '# Blank = not known: the tool then takes the value named behind “blank” and lists it as assumed.';

/**
 * A study to fill in: the least that gives an answer, every further item blank, each with a comment that says what it
 * is and how to measure it. It reads without errors as it stands.
 *
 * @param kinds - drive types to compare; each gives one example row, the first is the baseline
 * @param allColumns - with every column of candidates.csv that the types have, not only what a listing or a maker's own
 * scale and ruler usually tell
 */
export function starterStudy(kinds: DriveKind | readonly DriveKind[], allColumns = false): StarterFile[] {
  const list = typeof kinds === 'string' ? [kinds] : driveKinds.filter((kind) => kinds.includes(kind));
  return [
    { name: 'study.csv', text: studyText(placeholders.candidates[list[0]!].id!) },
    tableFile(
      'candidates.csv',
      candidateFields(list).filter(({ name }) => allColumns || usualColumns.includes(name)),
      list.map((kind) => placeholders.candidates[kind]),
      [],
      allColumns ? [] : [moreColumns],
    ),
    tableFile('show.csv', showFields('hinge'), placeholders.cues),
    tableFile('packs.csv', packFields, [placeholders.pack]),
    tableFile('loads.csv', loadFields, placeholders.loads),
    tableFile('criteria.csv', criterionFields, [], placeholders.criteria),
    tableFile('day.csv', dayFields, [], placeholders.day),
    tableFile('measured.csv', measuredFields, [], placeholders.measured),
  ];
}

/** What a listing tells, or a scale, a ruler and a multimeter; the others stay assumed in most studies. */
const usualColumns: readonly string[] = [
  ...['id', 'label', 'type', 'drives_per_feature', 'rated_voltage', 'maximum_voltage', 'no_load_speed'],
  ...['no_load_current', 'stall_torque', 'stall_force', 'stall_current', 'hold_current', 'hold_effort'],
  ...['control', 'position_feedback', 'stroke', 'closed_length', 'mass', 'mount_mass', 'electronics_mass'],
  ...['length', 'width', 'height', 'price', 'extra_cost', 'rework_hours', 'swap_minutes'],
  ...['noise', 'noise_distance', 'note'],
];

const moreColumns =
  '# More columns exist: a loaded point instead of the stall figure (rated_torque, rated_speed, rated_current), gears, cords and strut pivots, a regulator, heat. “new --all-columns” writes every one; add to the header what you need.';

/** Columns of the types, each once, in the order of the first type that has it. */
function candidateFields(kinds: readonly DriveKind[]): FieldDeclaration[] {
  const all = kinds.flatMap((kind) => driveTypes[kind].columns);
  return all.filter((field, index) => all.findIndex(({ name }) => name === field.name) === index);
}

function studyText(baseline: string): string {
  const lines = studyFields('hinge').flatMap((field) => {
    const value = field.name === 'baseline' ? baseline : (placeholders.items[field.name] ?? '');
    return [commentLine(field), csvLine([field.name, value, '', ''])];
  });
  return csvText([warning, blankRule, 'item,value,unit,note', ...lines]);
}

type Cells = Readonly<Record<string, string>>;

/** A table with a comment line for each column above its header; optional rows stand below as comments. */
function tableFile(
  name: string,
  fields: readonly FieldDeclaration[],
  rows: readonly Cells[],
  commented: readonly Cells[] = [],
  remarks: readonly string[] = [],
): StarterFile {
  const line = (cells: Cells) => csvLine(fields.map((field) => cells[field.name] ?? ''));
  const hint =
    commented.length === 0 ? [] : ['# This file is optional. Take the # away from a row to use it.'];
  const text = csvText([
    warning,
    ...hint,
    ...remarks,
    ...fields.map(commentLine),
    csvLine(fields.map((field) => field.name)),
    ...rows.map(line),
    ...commented.map((cells) => `# ${line(cells)}`),
  ]);
  return { name, text };
}
