import type { OwnTemplates } from '../app/templates/own-templates.js';
import type { Issue, Result } from '../problem/issue.js';
import type { Reading } from './reading.js';
import { templateFiles } from './template-files.js';

/** The templates of a run, and who tells what is wrong with them. */
export interface OwnWording extends OwnTemplates {
  /**
   * Does the work of a command and adds what was found in the templates. Where they cannot be used, the work is not
   * done: the wording is only put together, so that everything that is wrong with it is told in one run.
   */
  worked<T>(reading: Reading, work: (reading: Reading) => Promise<Result<T>> | Result<T>): Promise<Result<T>>;
}

/**
 * The templates that came with the program, under the user's own where a folder of them is named.
 *
 * @param shipped texts of the templates that came with the program
 * @param folder as the user wrote it
 */
export async function ownWording(
  shipped: Record<string, string>,
  folder: string | undefined,
): Promise<OwnWording> {
  if (folder === undefined) {
    return { templates: shipped, images: {}, issues: [], worked: async (reading, work) => work(reading) };
  }
  const { faultIssues, ownTemplates } = await import('../app/templates/own-templates.js');
  const own = ownTemplates(shipped, folder, templateFiles(folder));
  const { issues } = own;
  return {
    ...own,
    async worked(reading, work) {
      const isSound = issues.every(({ severity }) => severity !== 'error');
      try {
        const result = isSound ? await work(reading) : await putTogether(reading);
        return { ...result, issues: eachOnce([...issues, ...result.issues]) };
      } catch (error) {
        return { ok: false, issues: eachOnce([...issues, ...faultIssues(error, folder)]) };
      }
    },
  };
}

/** Nothing but issues: those of the study, or those of a report on it. */
async function putTogether(reading: Reading): Promise<Result<never>> {
  const { assessStudy, checkWording } = await import('../app/study.js');
  const assessed = assessStudy(reading, 'ranking');
  if (assessed.ok) await checkWording(assessed.value, reading);
  return { ok: false, issues: assessed.issues };
}

/** What is found before the work may be found again in it. */
function eachOnce(issues: Issue[]): Issue[] {
  return [...new Map(issues.map((issue) => [JSON.stringify(issue), issue])).values()];
}
