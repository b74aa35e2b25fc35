import { readFileSync } from 'node:fs';
import type { CarriedStudy } from '../app/rerun.js';
import type { Assessment } from '../assess/assessment.js';
import { unreadable } from '../problem/command-messages.js';
import { issueAt } from '../problem/trouble.js';
import { type ExitCode, exitCodes } from './exit-codes.js';
import { templateTexts } from './files.js';
import type { Shell } from './shell.js';

/** The study that a report carries, or the reason why the command stops; what was wrong has been told. */
export async function openReport(name: string, shell: Shell): Promise<CarriedStudy | { stop: ExitCode }> {
  let pdf: Uint8Array;
  try {
    pdf = readFileSync(name);
  } catch (error) {
    const place = { file: name, line: null, column: null };
    shell.tell([issueAt(place, unreadable((error as Error).message))]);
    return { stop: exitCodes.inputErrors };
  }
  const { studyFromReport } = await import('../app/rerun.js');
  const carried = await studyFromReport(name, pdf, templateTexts());
  shell.tell(carried.issues);
  return carried.ok ? carried.value : { stop: exitCodes.inputErrors };
}

/** Whether the results are those of the report that the study came from, as data and in words. */
export async function agreementWith(carried: CarriedStudy, assessment: Assessment) {
  const { resultsText } = await import('../app/study.js');
  const { agreementOf } = await import('../app/rerun-agreement.js');
  const { rerunText } = await import('../app/rerun-text.js');
  const agreement = agreementOf(carried.results, resultsText(assessment));
  return { agreement, text: (name: string, width: number) => rerunText(name, carried, agreement, width) };
}
