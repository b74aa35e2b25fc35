import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';
import { listed } from './value-messages.js';

const meant = (nearest: string | null, otherwise: string): string =>
  nearest === null ? otherwise : `did you mean ${nearest}?`;

/** A header name that no field has. */
export function unknownColumn(received: string, nearest: string | null): Trouble {
  return errorOf(
    'unknown-column',
    received,
    nearest ?? 'a declared column',
    `there is no column “${quoted(received)}”`,
    meant(nearest, 'a column of your own starts with my_ and is kept without being read'),
  );
}

/** A column that every row needs. */
export function missingColumn(name: string): Trouble {
  return errorOf('missing-column', '', name, `the column ${name} is missing`, `add ${name} to the header`);
}

/** The same header name twice. */
export function duplicateColumn(name: string): Trouble {
  return errorOf(
    'duplicate-column',
    name,
    'every column once',
    `the column “${quoted(name)}” is there twice`,
    'delete one of them, or rename one to my_…',
  );
}

/** Cells below a blank header. */
export function columnWithoutName(received: string, position: number): Trouble {
  return errorOf(
    'column-without-name',
    received,
    'a name in the header',
    `“${quoted(received)}” stands in column ${position}, which has no name`,
    'name the column in the header, or empty the cell',
  );
}

/** More cells than the header has. */
export function rowTooLong(cells: number, columns: number, extra: string, commas: boolean): Trouble {
  return errorOf(
    'row-too-long',
    extra,
    `${columns} cells`,
    `the row has ${cells} cells, the header ${columns}: “${quoted(extra)}” is too much`,
    commas
      ? 'a comma inside a text or number? Put the text in quotes, and write decimals with a point'
      : 'a separator too many, or one inside a text? Put the text in quotes',
  );
}

/** A unit in the header that is unknown. */
export function unknownHeaderUnit(received: string, unit: string): Trouble {
  return errorOf(
    'unknown-unit',
    received,
    'a unit the tool knows',
    `“${quoted(unit)}” in the header “${quoted(received)}” is not a unit the tool knows`,
    'write the unit in brackets: stall_torque [kg·cm]',
  );
}

/** A required cell is blank. */
export function blankRequired(name: string, meaning: string, how: string): Trouble {
  return errorOf('blank-required', '', meaning, `${name} is blank: ${meaning}`, `how to find it: ${how}`);
}

/** A value where the field means nothing. */
export function notApplicable(name: string, received: string, where: string): Trouble {
  return errorOf(
    'not-applicable',
    received,
    'a blank cell',
    `${name} means nothing for ${where}`,
    'empty the cell',
  );
}

/** A word that is none of the choices. */
export function unknownChoice(
  name: string,
  received: string,
  choices: readonly string[],
  nearest: string | null,
): Trouble {
  return errorOf(
    'unknown-choice',
    received,
    listed(choices),
    `“${quoted(received)}” is no ${name}`,
    meant(nearest, `choose ${listed(choices)}`),
  );
}

/** Not a whole number. */
export function notWhole(received: string): Trouble {
  return errorOf(
    'not-a-whole-number',
    received,
    'a whole number without a spread',
    `“${quoted(received)}” is not a whole number`,
    'write 1, 2, 3 …',
  );
}

/** No calendar date. */
export function notADate(received: string): Trouble {
  return errorOf(
    'not-a-date',
    received,
    'a date such as 2026-03-14',
    `“${quoted(received)}” is not a date that reads in one way only`,
    'write year-month-day: 2026-03-14',
  );
}

/** An id with signs that flags and paths cannot hold. */
export function badName(received: string): Trouble {
  const better = received
    .trim()
    .replace(/[^\p{L}\p{N}_-]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return errorOf(
    'bad-name',
    received,
    'letters, digits, - and _',
    `“${quoted(received)}” cannot be an id: only letters, digits, - and _ are`,
    better === '' ? 'use letters and digits' : `write ${better}`,
  );
}

/** An id that was used before. */
export function duplicateId(id: string, firstLine: number): Trouble {
  return errorOf(
    'duplicate-id',
    id,
    'every id once',
    `the id “${quoted(id)}” was used in line ${firstLine} already`,
    'give one of them another id',
  );
}

/** A unit where no unit belongs. */
export function unitIgnored(name: string, unit: string): Trouble {
  return warningOf(
    'unit-ignored',
    unit,
    'a blank unit',
    `${name} takes no unit; “${quoted(unit)}” was not read`,
    'empty the unit',
  );
}
