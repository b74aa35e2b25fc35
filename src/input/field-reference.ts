import { driveKinds } from '../drives/columns.js';
import { driveTypes } from '../drives/registry.js';
import type { FieldDeclaration } from '../quantity/field.js';
import {
  criterionFacts,
  criterionFields,
  measuredDimensions,
  measuredFields,
} from '../study/choosing-fields.js';
import { studyFields } from '../study/fields.js';
import { dayFields, showFields } from '../study/show-fields.js';
import { loadFields, packFields } from '../study/supply-fields.js';
import { blankWords, holdsWords } from './field-words.js';

/** The field reference as Markdown: every file, every column and item, from the declarations. */
export function fieldReference(): string {
  const hinge = studyFields('hinge');
  const slideOnly = studyFields('slide').filter(({ name }) => !hinge.some((field) => field.name === name));
  const sections = [
    section('study.csv', 'One row per item: `item,value,unit,note`.', hinge),
    section('study.csv on a slide', 'Items that a feature on a rail has besides.', slideOnly),
    candidates(),
    section('show.csv', 'One row per cue.', showFields('hinge')),
    section('packs.csv', 'One row per pack.', packFields),
    section('loads.csv', 'One row per load beside the drives. Optional.', loadFields),
    section('criteria.csv', `One row per criterion. Optional. ${criteria()}`, criterionFields),
    section('day.csv', 'One row per part of the event day. Optional.', dayFields),
    section('measured.csv', `Readings on the baseline. Optional. ${measured()}`, measuredFields),
  ];
  return `# Fields\n\n${sections.join('\n')}`;
}

function section(title: string, about: string, fields: readonly FieldDeclaration[]): string {
  const rows = fields.map((field) =>
    tableRow([code(field.name), field.meaning, holdsWords(field), blankWords(field), field.how]),
  );
  const head = [tableRow(['name', 'meaning', 'holds', 'when blank', 'how to find it']), tableRow(dashes(5))];
  return `## ${title}\n\n${about}\n\n${[...head, ...rows].join('\n')}\n`;
}

/** Candidates: what a blank means differs by type, so each type has its own column. */
function candidates(): string {
  const all = driveKinds.flatMap((kind) => driveTypes[kind].columns);
  const fields = all.filter((field, index) => all.findIndex(({ name }) => name === field.name) === index);
  const rows = fields.map((field) => {
    const byKind = driveKinds.map((kind) => {
      const own = driveTypes[kind].columns.find(({ name }) => name === field.name);
      return own === undefined ? '–' : blankWords(own);
    });
    return tableRow([code(field.name), field.meaning, holdsWords(field), ...byKind, field.how]);
  });
  const head = tableRow(['name', 'meaning', 'holds', ...driveKinds, 'how to find it']);
  const about =
    'One row per candidate; `–` = a value is an error for that type. A row may repeat an id at another rated voltage.';
  return `## candidates.csv\n\n${about}\n\n${[head, tableRow(dashes(7)), ...rows].join('\n')}\n`;
}

function criteria(): string {
  const listed = Object.entries(criterionFacts).map(([id, { meaning }]) => `${code(id)} ${meaning}`);
  return `Criteria: ${listed.join('; ')}.`;
}

function measured(): string {
  return `Quantities: ${Object.keys(measuredDimensions).map(code).join(', ')}.`;
}

const code = (text: string): string => `\`${text}\``;
const dashes = (width: number): string[] => Array.from({ length: width }, () => '---');
const tableRow = (cells: readonly string[]): string =>
  `| ${cells.map((cell) => cell.replace(/\|/g, '\\|').replace(/\n/g, ' ')).join(' | ')} |`;
