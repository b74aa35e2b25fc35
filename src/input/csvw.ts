import { driveTypes } from '../drives/registry.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { criterionFields, measuredFields } from '../study/choosing-fields.js';
import { studyColumns } from '../study/fields.js';
import { dayFields, showFields } from '../study/show-fields.js';
import { loadFields, packFields } from '../study/supply-fields.js';
import { blankWords, holdsWords } from './field-words.js';

/** One column in a CSVW description. */
interface CsvwColumn {
  name: string;
  titles: string;
  datatype: string | { base: string; format: string };
  required: boolean;
  'dc:description': string;
}

/** A CSVW table group: the files of a study and their columns. */
export interface CsvwDescription {
  '@context': [string, { '@language': string }];
  dialect: { header: true; commentPrefix: '#'; encoding: 'utf-8' };
  tables: { url: string; 'dc:description': string; tableSchema: { columns: CsvwColumn[] } }[];
}

/**
 * The files of a study as a CSV on the Web description. Quantities are strings: a cell holds number, unit and spread.
 *
 * @param files - names of the files that are there; candidates may have several
 */
export function csvwDescription(
  files: readonly string[] = Object.keys(columnsOf).map((role) => `${role}.csv`),
): CsvwDescription {
  return {
    '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
    dialect: { header: true, commentPrefix: '#', encoding: 'utf-8' },
    tables: files.flatMap((url) => {
      const role = Object.keys(columnsOf).find((name) => url === `${name}.csv` || url.startsWith(`${name}-`));
      if (role === undefined) return [];
      const { about, fields } = columnsOf[role]!;
      return [{ url, 'dc:description': about, tableSchema: { columns: fields().map(column) } }];
    }),
  };
}

const columnsOf: Record<string, { about: string; fields: () => readonly FieldDeclaration[] }> = {
  study: { about: 'items of the study', fields: () => studyColumns },
  candidates: { about: 'drives to compare', fields: candidateFields },
  show: { about: 'cue list', fields: () => showFields('hinge') },
  packs: { about: 'battery packs', fields: () => packFields },
  loads: { about: 'loads beside the drives', fields: () => loadFields },
  criteria: { about: 'weights and limits', fields: () => criterionFields },
  day: { about: 'blocks of the event day', fields: () => dayFields },
  measured: { about: 'readings on the baseline', fields: () => measuredFields },
};

function candidateFields(): FieldDeclaration[] {
  const all = Object.values(driveTypes).flatMap(({ columns }) => columns);
  return all.filter((field, index) => all.findIndex(({ name }) => name === field.name) === index);
}

function column(field: FieldDeclaration): CsvwColumn {
  return {
    name: field.name,
    titles: field.name,
    datatype:
      field.kind === 'choice' ? { base: 'string', format: field.choices.join('|') } : datatypes[field.kind],
    required: field.presence === 'required',
    'dc:description': `${field.meaning}. Holds: ${holdsWords(field)}. Blank: ${blankWords(field)}. How: ${field.how}.`,
  };
}

const datatypes: Record<FieldDeclaration['kind'], string> = {
  quantity: 'string',
  count: 'integer',
  text: 'string',
  choice: 'string',
  'yes-no': 'string',
  date: 'date',
  name: 'string',
};
