import { decode } from '../input/decode.js';
import type { StudyRequest } from './study-request.js';

/** A sign that no font has. */
export interface MissingCharacter {
  character: string;
  /** A text it stood in, as shown. */
  context: string;
  /** Where it was read first; null when it stands in no file as such. */
  place: { file: string; line: number } | null;
}

type Written = Pick<StudyRequest, 'files' | 'templates'>;

/** Finds for each sign the file and line that it came from: the study's files first, then the templates. */
export function placed(
  missing: readonly { character: string; context: string }[],
  written: Written,
): MissingCharacter[] {
  if (missing.length === 0) return [];
  const texts = textsOf(written);
  return missing.map(({ character, context }) => {
    const found = texts.find(({ text }) => text.includes(character));
    const line = found?.text.slice(0, found.text.indexOf(character)).split('\n').length;
    return { character, context, place: found ? { file: found.file, line: line! } : null };
  });
}

function textsOf({ files, templates }: Written): { file: string; text: string }[] {
  // Whatever is wrong with a file was said when the study was read.
  const inputs = files.map((file) => ({ file: file.name, text: decode(file, () => {}) ?? '' }));
  const wording = Object.entries(templates).map(([name, text]) => ({ file: `templates/${name}`, text }));
  return [...inputs, ...wording];
}
