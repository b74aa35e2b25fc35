import * as say from '../problem/file-messages.js';
import type { Report } from '../problem/trouble.js';
import { type InputFile, largestFileBytes } from './files.js';

/**
 * The text of a file: UTF-8 with or without byte order mark, UTF-16 with one, else Windows-1252 with a warning.
 * Line ends become `\n`.
 *
 * @returns null when the file cannot be read as text; the reason has been reported
 */
export function decode(file: InputFile, report: Report): string | null {
  const { name, bytes } = file;
  const place = { file: name, line: null, column: null };
  if (bytes.length > largestFileBytes) {
    report(place, say.fileTooLarge(bytes.length, largestFileBytes));
    return null;
  }
  const other = contentOtherThanText(bytes);
  if (other !== null) {
    report(place, say.notATable(other.what, other.hint));
    return null;
  }
  const text = decodeMarked(bytes) ?? decodeUnmarked(bytes, () => report(place, say.notUtf8()));
  if (text === null) {
    report(place, say.utf16WithoutMark());
    return null;
  }
  if (text.includes('\u0000')) {
    const line = text.slice(0, text.indexOf('\u0000')).split('\n').length;
    report({ ...place, line }, say.nulCharacter());
    return null;
  }
  if (text.trim() === '') {
    report(place, say.emptyFile());
    return null;
  }
  return text.replace(/\r\n?/g, '\n');
}

const saveAsCsv = 'open it in a spreadsheet program and save it as CSV in UTF-8';

/** Files that people give the name of a table, by the bytes they begin with. */
const otherContents: { start: readonly number[]; what: string; hint: string }[] = [
  { start: [0x50, 0x4b, 0x03, 0x04], what: 'a workbook or another packed file', hint: saveAsCsv },
  { start: [0xd0, 0xcf, 0x11, 0xe0], what: 'a workbook of an old kind', hint: saveAsCsv },
  { start: [0x25, 0x50, 0x44, 0x46], what: 'a PDF', hint: 'type its figures into a table' },
  { start: [0x89, 0x50, 0x4e, 0x47], what: 'a picture', hint: 'type its figures into a table' },
  { start: [0xff, 0xd8, 0xff], what: 'a picture', hint: 'type its figures into a table' },
];

function contentOtherThanText(bytes: Uint8Array) {
  return otherContents.find(({ start }) => start.every((byte, index) => bytes[index] === byte)) ?? null;
}

function decodeMarked(bytes: Uint8Array): string | null {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : null;
  return encoding === null ? null : new TextDecoder(encoding).decode(bytes);
}

/** null when the bytes look like UTF-16 without its mark. */
function decodeUnmarked(bytes: Uint8Array, warn: () => void): string | null {
  if (looksLikeUtf16(bytes)) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    warn();
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** Plain text in UTF-16 has a zero in every other byte; no text in UTF-8 has. */
function looksLikeUtf16(bytes: Uint8Array): boolean {
  const sample = bytes.subarray(0, 2000);
  if (sample.length < 4) return false;
  const zeros = [0, 0];
  for (let index = 0; index < sample.length; index++) if (sample[index] === 0) zeros[index % 2]!++;
  const [even, odd] = zeros as [number, number];
  return Math.max(even, odd) > sample.length * 0.2 && Math.min(even, odd) < sample.length * 0.05;
}
