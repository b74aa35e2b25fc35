import type { OpenedRecord } from '../archive/read-archive.js';
import type { RecordedInput } from '../archive/record.js';
import { assumptionsFile, type InputFile } from '../input/files.js';
import { readAssumptions } from '../input/read-assumptions.js';
import { readStudy } from '../input/read-study.js';
import type { Result } from '../problem/issue.js';
import type { Templates } from '../report/index.js';
import type { Study } from '../study/study.js';

/** A record that is sound: what was decided, and the files it was decided on. */
export interface SoundRecord {
  stored: OpenedRecord;
  decision: NonNullable<OpenedRecord['record']>;
  /** Under the names they had. */
  files: InputFile[];
  /** Table of assumptions; null when it was the one that ships. */
  assumptions: string | null;
}

/** The files of a record; null when it is damaged. */
export function soundRecord(stored: OpenedRecord): SoundRecord | null {
  const decision = stored.record;
  // A log beside the record may be damaged; the record itself is as sound as before.
  if (decision === null || stored.entry === null) return null;
  const bytes = (input: RecordedInput): Uint8Array => stored.payload.get(input.file)!;
  const { inputs, assumptions } = decision;
  return {
    stored,
    decision,
    files: inputs.map((input) => ({ name: input.name, bytes: bytes(input) })),
    assumptions: assumptions === null ? null : new TextDecoder().decode(bytes(assumptions)),
  };
}

/** The templates with the table of assumptions of a record in place of the program's own. */
export function templatesOf({ assumptions }: SoundRecord, templates: Templates): Templates {
  const { [assumptionsFile]: _, ...others } = templates;
  return assumptions === null ? others : { ...others, [assumptionsFile]: assumptions };
}

/** The study of a record, read anew. */
export function studyOf(record: SoundRecord, templates: Templates): Result<Study> {
  return readStudy(record.files, readAssumptions(templatesOf(record, templates)), []);
}
