import { attachedFiles } from '../archive/attached.js';
import * as say from '../archive/attached-messages.js';
import { sha256Of, textOf } from '../archive/digest.js';
import { assumptionsFile, type InputFile } from '../input/files.js';
import { pointsOfViewFile } from '../input/read-points-of-view.js';
import type { Result } from '../problem/issue.js';
import { issueAt, type Trouble } from '../problem/trouble.js';
import type { Templates } from '../report/index.js';
import { carriedNames, type RerunSettings, settingsFrom } from './rerun-settings.js';

/** A study out of a report, ready to be computed anew. */
export interface CarriedStudy {
  /** Under the names they had in the study folder. */
  files: InputFile[];
  settings: RerunSettings;
  /** Text of the results that the report was made from. */
  results: string;
  /** The program's templates with the tables of the report in place of its own. */
  templates: Templates;
}

/**
 * Takes a study out of the PDF of a report, with every file proved to be what the report was made from.
 * @param name of the PDF, as typed
 * @param templates those of the program
 */
export async function studyFromReport(
  name: string,
  pdf: Uint8Array,
  templates: Templates,
): Promise<Result<CarriedStudy>> {
  const refused = (...troubles: Trouble[]): Result<never> => {
    const place = { file: name, line: null, column: null };
    return { ok: false, issues: troubles.map((trouble) => issueAt(place, trouble)) };
  };
  const attached = await attachedFiles(pdf);
  if (attached === null) return refused(say.unreadablePdf());
  const contents = new Map(attached.map((file) => [file.name, file.bytes]));
  const written = contents.get(carriedNames.settings);
  if (written === undefined) return refused(say.carriesNoStudy());
  const settings = settingsFrom(textOf(written));
  if (settings === null) return refused(say.unknownSettings(carriedNames.settings));
  const troubles = troublesWith(settings, contents);
  if (troubles.length > 0) return refused(...troubles);

  const bytes = (attachment: string): Uint8Array => contents.get(attachment)!;
  const inputs = settings.files.filter(({ role }) => role === 'input');
  const value: CarriedStudy = {
    settings,
    files: inputs.map((file) => ({ name: file.name, bytes: bytes(file.attachment) })),
    results: textOf(bytes(carriedNames.results)),
    templates: templatesOf(settings, bytes, templates),
  };
  return { ok: true, value, issues: [] };
}

function troublesWith({ files }: RerunSettings, contents: Map<string, Uint8Array>): Trouble[] {
  const expected = [...files, { attachment: carriedNames.results, sha256: null }];
  return expected.flatMap(({ attachment, sha256 }) => {
    const bytes = contents.get(attachment);
    if (bytes === undefined) return [say.missingAttachment(attachment)];
    const actual = sha256Of(bytes);
    return sha256 === null || actual === sha256 ? [] : [say.changedAttachment(attachment, actual, sha256)];
  });
}

/** A report that carries no such table was made with what the program takes without one. */
function templatesOf(
  { files }: RerunSettings,
  bytes: (attachment: string) => Uint8Array,
  templates: Templates,
): Templates {
  const { [assumptionsFile]: _, [pointsOfViewFile]: __, ...wording } = templates;
  const tables = files
    .filter(({ role }) => role !== 'input')
    .map(({ name, attachment }) => [name, textOf(bytes(attachment))] as const);
  return { ...wording, ...Object.fromEntries(tables) };
}
