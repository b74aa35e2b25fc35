import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';

/** A file that every study needs is not there. */
export function missingFile(file: string, nearest: string | null): Trouble {
  return errorOf(
    'missing-file',
    '',
    file,
    `${file} is missing`,
    nearest === null
      ? `add ${file}; a fresh study has one to copy: holdwright new fresh-study`
      : `is ${quoted(nearest)} meant? Rename it to ${file}`,
  );
}

/** A file whose name says nothing; it is not read. */
export function unknownFile(file: string, nearest: string | null): Trouble {
  return warningOf(
    'unknown-file',
    file,
    'a file of the study folder',
    `${quoted(file)} is not a file of a study and was not read`,
    nearest === null ? '' : `did you mean ${nearest}?`,
  );
}

/** Two files with names that differ in case only, or the same name twice. */
export function sameFileTwice(file: string): Trouble {
  return errorOf(
    'same-file-twice',
    file,
    'one file of this name',
    `${quoted(file)} is there twice`,
    'keep one of them',
  );
}

/** Larger than the program reads. */
export function fileTooLarge(bytes: number, largest: number): Trouble {
  const size = `${Math.ceil(bytes / 1024 / 1024)} MB`;
  const limit = `${Math.round(largest / 1024 / 1024)} MB`;
  return errorOf(
    'file-too-large',
    size,
    `at most ${limit}`,
    `the file has ${size}; at most ${limit} are read`,
  );
}

/** More rows than the program reads. */
export function tooManyRows(most: number): Trouble {
  return errorOf(
    'too-many-rows',
    '',
    `at most ${most} rows`,
    `the file has more than ${most} rows`,
    'is this the right file?',
  );
}

/** More cells in a row than the program reads. */
export function tooManyColumns(cells: number, most: number): Trouble {
  return errorOf(
    'too-many-columns',
    '',
    `at most ${most} columns`,
    `the row has ${cells} cells; at most ${most} are read`,
    'is this the right file?',
  );
}

/** A workbook, a PDF, a picture: whatever its name says, it holds no text. */
export function notATable(what: string, hint: string): Trouble {
  return errorOf(
    'not-a-table',
    what,
    'text: CSV in UTF-8',
    `the file is ${what}, whatever its name says`,
    hint,
  );
}

/** A workbook beside the tables. */
export function workbook(file: string): Trouble {
  return warningOf(
    'workbook',
    file,
    'CSV files',
    `${quoted(file)} is a workbook and was not read`,
    'save each sheet as CSV in UTF-8: study.csv, candidates.csv and so on',
  );
}

/** Nothing in it. */
export function emptyFile(): Trouble {
  return errorOf('empty-file', '', 'a header line and at least one row', 'the file is empty');
}

/** A header and nothing below. */
export function noRows(): Trouble {
  return errorOf(
    'no-rows',
    '',
    'at least one row below the header',
    'there is no row below the header',
    'add a row; a line that begins with # is a comment and counts for nothing',
  );
}

/** Bytes that are no UTF-8. */
export function notUtf8(): Trouble {
  return warningOf(
    'not-utf-8',
    '',
    'UTF-8',
    'the file is not UTF-8; it was read as Windows-1252',
    'if signs such as ° or Ω look wrong, save it as UTF-8',
  );
}

/** UTF-16 that does not say so. */
export function utf16WithoutMark(): Trouble {
  return errorOf(
    'utf-16-without-mark',
    '',
    'UTF-8, or UTF-16 with a byte order mark',
    'the file looks like UTF-16 but has no byte order mark',
    'save it as UTF-8',
  );
}

/** A zero character: no text file has one. */
export function nulCharacter(): Trouble {
  return errorOf(
    'nul-character',
    '',
    'text',
    'there is a zero character in the file, so it is no text file or it is damaged',
    'save it again as CSV in UTF-8',
  );
}

/** Characters that do not show. */
export function controlCharacters(received: string): Trouble {
  return warningOf(
    'control-characters',
    received,
    'visible characters',
    `“${quoted(received)}” holds characters that do not show; they are left out wherever it is printed`,
    'type the cell again',
  );
}

/** Longer than any note. */
export function cellTooLong(received: string, longest: number): Trouble {
  return errorOf(
    'cell-too-long',
    quoted(received, 40),
    `at most ${longest} characters`,
    `the cell has ${received.length} characters; at most ${longest} are read`,
    'is a quote missing somewhere? Else shorten the text',
  );
}

/** A quote that does not close, or stands inside a cell. */
export function badQuotes(received: string): Trouble {
  return errorOf(
    'bad-quotes',
    quoted(received),
    'a cell in quotes with every quote inside it doubled',
    'the quotes in this row do not close; nothing behind it can be read',
    'write a quote inside a quoted cell twice (12" as "12"""), or leave the quotes out',
  );
}
