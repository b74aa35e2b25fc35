import { assumptionsFile, type InputFile } from '../../input/files.js';
import { pointsOfViewFile } from '../../input/read-points-of-view.js';
import type { Issue } from '../../problem/issue.js';
import { nearestName } from '../../problem/nearest-name.js';
import * as say from '../../problem/template-messages.js';
import { issueAt, type Trouble } from '../../problem/trouble.js';
import {
  checkTemplates,
  cleanText,
  completedPhrases,
  phrasesFile,
  type ReportImage,
  TemplateError,
  type Templates,
} from '../../report/index.js';
import { readPicture } from './read-picture.js';

/** The templates of a run: the user's own files where there are some, the others as they came with the program. */
export interface OwnTemplates {
  templates: Templates;
  /** Pictures of the folder `report/` by the name of their file. */
  images: Record<string, ReportImage>;
  issues: Issue[];
}

/** Files that a report is made from; others of the folder are for people. */
const used = /^(?:report\/[\w-]+\.md|charts\/[\w-]+\.json)$/;
const picture = /^report\/([^/]+\.(?:png|jpe?g))$/i;

/**
 * Puts the user's own templates over those that came with the program, and checks them.
 *
 * @param folder as the user wrote it, for messages
 * @param read the files below the folder, named with `/`, and what was wrong with the folder
 */
export function ownTemplates(
  shipped: Templates,
  folder: string,
  { files, issues: unread }: { files: readonly InputFile[]; issues: readonly Issue[] },
): OwnTemplates {
  const issues = [...unread];
  const note = (file: string, trouble: Trouble): void => {
    issues.push(issueAt({ file: `${folder}/${file}`, line: null, column: null }, trouble));
  };
  const own: Templates = {};
  const images: Record<string, ReportImage> = {};
  for (const { name, bytes } of files) {
    const pictureName = picture.exec(name)?.[1];
    if (pictureName !== undefined) {
      const read = readPicture(bytes);
      if ('format' in read) images[pictureName] = read;
      else note(name, read);
    } else if (!Object.hasOwn(shipped, name)) {
      note(name, say.unknownTemplate(name, nearestTemplate(name, shipped)));
    } else if (isUsed(name)) {
      const text = textOf(name, bytes);
      if (text === null) note(name, say.templateNotText());
      else own[name] = text;
    }
  }
  if (Object.keys(own).length === 0 && issues.length === 0) note('', say.noTemplates());
  const faults = faultsOf(() => checkTemplates(own, shipped), folder);
  issues.push(...faults);
  // What is told already must not hide what is wrong elsewhere.
  for (const { file } of faults) delete own[file.slice(folder.length + 1)];
  const phrases = own[phrasesFile];
  if (phrases !== undefined) own[phrasesFile] = completedPhrases(phrases, shipped[phrasesFile]!);
  return { templates: { ...shipped, ...own }, images, issues };
}

/**
 * Every fault that a piece of work found in templates, as issues of the folder that the user named.
 *
 * @throws the error itself when it is of another kind
 */
export function faultIssues(error: unknown, folder: string): Issue[] {
  if (!(error instanceof TemplateError)) throw error;
  return error.problems.map(({ file, line, problem }) =>
    issueAt({ file: `${folder}/${file}`, line, column: null }, say.templateFault(problem)),
  );
}

function faultsOf(work: () => void, folder: string): Issue[] {
  try {
    work();
    return [];
  } catch (error) {
    return faultIssues(error, folder);
  }
}

function isUsed(name: string): boolean {
  return used.test(name) || name === assumptionsFile || name === pointsOfViewFile;
}

/** The template that may have been meant, also where only its folder was forgotten. */
function nearestTemplate(name: string, shipped: Templates): string | null {
  const known = Object.keys(shipped).filter(isUsed);
  const base = name.slice(name.lastIndexOf('/') + 1);
  return known.find((one) => one.endsWith(`/${base}`)) ?? nearestName(name, known);
}

/** The text, wording without control characters; null when it is no UTF-8. Tables are cleaned cell by cell when read. */
function textOf(name: string, bytes: Uint8Array): string | null {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (name.endsWith('.csv')) return text;
    return text
      .split(/\r?\n/)
      .map((line) => `${/^[ \t]*/.exec(line)![0]}${cleanText(line.trimStart())}`)
      .join('\n');
  } catch {
    return null;
  }
}
