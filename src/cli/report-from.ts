import { readFileSync } from 'node:fs';
import type { CarriedStudy } from '../app/rerun.js';
import type { Assessment } from '../assess/assessment.js';
import { type ExitCode, exitCodes } from './exit-codes.js';
import { templateTexts } from './files.js';
import { talkAboutIssues } from './records-talk.js';
import type { Shell } from './shell.js';

/** The study that a report carries, or the reason why the command stops; what was wrong has been told. */
export async function openReport(name: string, shell: Shell): Promise<CarriedStudy | { stop: ExitCode }> {
  let pdf: Uint8Array;
  try {
    pdf = readFileSync(name);
  } catch (error) {
    shell.terminal.talk(`error: ${name} cannot be read: ${(error as Error).message}`);
    return { stop: exitCodes.inputErrors };
  }
  const { studyFromReport } = await import('../app/rerun.js');
  const carried = await studyFromReport(name, pdf, templateTexts());
  talkAboutIssues(shell.terminal, carried.issues);
  return carried.ok ? carried.value : { stop: exitCodes.inputErrors };
}

/** What the study came from, and whether the results are those of that report. */
export async function agreementText(
  name: string,
  carried: CarriedStudy,
  assessment: Assessment,
  shell: Shell,
): Promise<string> {
  const { resultsText } = await import('../app/study.js');
  const { agreementOf } = await import('../app/rerun-agreement.js');
  const { rerunText } = await import('../app/rerun-text.js');
  const agreement = agreementOf(carried.results, resultsText(assessment));
  return `\n${rerunText(name, carried, agreement, shell.terminal.width)}`;
}
