import type { Assessment } from '../assess/assessment.js';

/** The results contract: the assessment without the texts of the input files, which travel beside it. */
export type Results = Omit<Assessment, 'inputs'> & { inputs: { name: string; sha256: string }[] };

/** Turns an assessment into what results.json holds. */
export function toResults(assessment: Assessment): Results {
  return { ...assessment, inputs: assessment.inputs.map(({ name, sha256 }) => ({ name, sha256 })) };
}
