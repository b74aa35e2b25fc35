import { bytesOf, sha256Of } from '../archive/digest.js';
import { payloadNames } from '../archive/payload-names.js';
import { csvwDescription } from '../input/csvw.js';
import { assumptionsFile, type InputFile } from '../input/files.js';
import { pointsOfViewFile } from '../input/read-points-of-view.js';
import type { UnitSystem } from '../quantity/display-units.js';
import type { Attachment } from '../render/pdf/attach.js';
import { type CarriedFile, carriedNames, settingsText } from './rerun-settings.js';
import type { ReportSetting, StudyRequest } from './study-request.js';

/** What a report carries is made from. */
export interface Carrying extends Pick<StudyRequest, 'files' | 'templates' | 'changes' | 'version'> {
  setting: ReportSetting;
  /** Units in which figures are written. */
  units?: UnitSystem;
  /** results.json. */
  results: InputFile;
}

/** A file of the run with its bytes as they were read. */
interface Source {
  role: CarriedFile['role'];
  name: string;
  bytes: Uint8Array;
  about: string;
}

/**
 * Everything that a report carries so that it can be made again from itself: the inputs as read, the tables that were
 * in force, the results with their schema, a description of the tables, and the settings.
 */
export function carriedFiles({ setting, results, ...request }: Carrying): Attachment[] {
  const sources = sourcesOf(request);
  const taken = Object.values(carriedNames);
  const names = payloadNames([...taken, ...sources.map(({ name }) => name)]).slice(taken.length);
  const files = sources.map(
    ({ role, name, bytes }, index): CarriedFile => ({
      ...{ role, name, attachment: names[index]!, sha256: sha256Of(bytes) },
    }),
  );
  const inputs = files.filter(({ role }) => role === 'input').map(({ attachment }) => attachment);
  const { version, changes, templates, units } = request;
  const { page, date } = setting;
  const schema = templates[carriedNames.schema];
  return [
    ...sources.map(({ bytes, about }, index) => table(names[index]!, bytes, about)),
    json('results', 'Data', results.bytes, 'every figure of the report'),
    ...(schema === undefined
      ? []
      : [json('schema', 'Supplement', bytesOf(schema), 'JSON Schema of the results')]),
    json(
      'description',
      'Supplement',
      bytesOf(`${JSON.stringify(csvwDescription(inputs), null, 2)}\n`),
      'what the columns of the input files mean (CSV on the Web)',
    ),
    json(
      'settings',
      'Supplement',
      bytesOf(settingsText({ version, page, units, date, changes, files })),
      'how the report was made',
    ),
  ];
}

function sourcesOf({ files, templates }: Pick<Carrying, 'files' | 'templates'>): Source[] {
  const inputs = [...files]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((file): Source => ({ ...file, role: 'input', about: 'input file as it was read' }));
  const beside = (role: CarriedFile['role'], name: string, about: string): Source[] => {
    const text = templates[name];
    return text === undefined ? [] : [{ role, name, bytes: bytesOf(text), about }];
  };
  return [
    ...inputs,
    ...beside('assumptions', assumptionsFile, 'what was taken where a cell was blank'),
    ...beside('points-of-view', pointsOfViewFile, 'weights of others'),
  ];
}

function table(name: string, bytes: Uint8Array, description: string): Attachment {
  return { name, bytes, mimeType: 'text/csv', relationship: 'Source', description };
}

function json(
  part: keyof typeof carriedNames,
  relationship: Attachment['relationship'],
  bytes: Uint8Array,
  description: string,
): Attachment {
  return { name: carriedNames[part], bytes, mimeType: 'application/json', relationship, description };
}
