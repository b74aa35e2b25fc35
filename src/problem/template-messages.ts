import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';

/** A file that is no template; it is not read. */
export function unknownTemplate(file: string, nearest: string | null): Trouble {
  return warningOf(
    'unknown-template',
    file,
    'a file as in the folder templates/ of the program',
    `${quoted(file)} is no template and was not read`,
    nearest === null ? '' : `did you mean ${nearest}?`,
  );
}

/** A folder of templates that has none. */
export function noTemplates(): Trouble {
  return warningOf(
    'no-templates',
    '',
    'files as in the folder templates/ of the program, such as report/answer.md',
    'no template is in this folder; the report is worded as it ships',
    'holdwright new FOLDER --wording writes a copy to edit',
  );
}

/** There is no such folder. */
export function noTemplateFolder(): Trouble {
  return errorOf(
    'no-template-folder',
    '',
    'a folder with templates',
    'there is no such folder',
    'holdwright new FOLDER --wording writes a copy of the templates to edit',
  );
}

/** A link, a pipe or a device: what it leads to may be anything. */
export function notAPlainFile(received: string): Trouble {
  return errorOf(
    'template-not-a-file',
    received,
    'a plain file in a plain folder',
    `this is ${received}, which may lead anywhere, and is not followed`,
    'put a copy of the file here',
  );
}

/** The file cannot be opened. */
export function templateUnreadable(why: string): Trouble {
  return errorOf('template-unreadable', why, 'a file that can be read', 'the file cannot be read');
}

/** Larger than a template ever is. */
export function templateTooLarge(bytes: number, largest: number): Trouble {
  const kilobytes = (size: number) => `${Math.ceil(size / 1024)} kB`;
  return errorOf(
    'template-too-large',
    kilobytes(bytes),
    `at most ${kilobytes(largest)}`,
    'the file is too large for a template',
  );
}

/** More files, or folders in folders, than templates have. */
export function tooManyTemplates(most: number): Trouble {
  return errorOf(
    'too-many-templates',
    `more than ${most} files, or folders three deep`,
    'a copy of the folder templates/',
    'this folder holds far more than templates',
    'is it the right folder?',
  );
}

/** Bytes that are no UTF-8 text. */
export function templateNotText(): Trouble {
  return errorOf(
    'template-not-text',
    'bytes that are no UTF-8',
    'a text file in UTF-8',
    'the file is not readable as text',
    'save it as UTF-8',
  );
}

/** A picture that cannot be printed. */
export function pictureUnfit(received: string, expected: string, hint = ''): Trouble {
  return errorOf('picture-unfit', received, expected, 'this picture cannot be printed', hint);
}

/** A fault inside a template, told by who read it. */
export function templateFault(problem: string): Trouble {
  return errorOf('template', '', '', problem);
}
