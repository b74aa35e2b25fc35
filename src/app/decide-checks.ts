import * as say from '../archive/decision-messages.js';
import type { LedgerEntry } from '../archive/ledger.js';
import type { Decision, UnfiledDecision } from '../archive/record.js';
import { obstacles } from '../assess/answer.js';
import type { Assessment, CandidateAssessment } from '../assess/assessment.js';
import type { Issue, Result } from '../problem/issue.js';
import { nearestName } from '../problem/nearest-name.js';
import { notADate } from '../problem/table-messages.js';
import { issueAt, type Trouble } from '../problem/trouble.js';
import { isoDate } from '../quantity/date-text.js';

/** A decision as it was typed. */
export interface DecisionWords {
  /** Id of the candidate. */
  choose: string;
  decision: Decision;
  because: string;
  /** null: whoever prepared the study. */
  by: string | null;
  date: string;
  lookAgain: string | null;
  supersedes: string | null;
}

/** The part of a record that comes from the words. */
export type CheckedDecision = Pick<
  UnfiledDecision,
  'decision' | 'choice' | 'because' | 'by' | 'date' | 'lookAgain' | 'supersedes'
>;

const longestReason = 10_000;
const longestName = 200;

/**
 * Holds the words against the study and the archive; everything that is wrong is told in one run.
 * @param before what the archive lists
 */
export function checkedDecision(
  words: DecisionWords,
  assessment: Assessment,
  before: readonly LedgerEntry[],
): Result<CheckedDecision> {
  const issues: Issue[] = [];
  const tell = (flag: string, trouble: Trouble) =>
    void issues.push(issueAt({ file: flag, line: null, column: null }, trouble));
  const { decision, because, supersedes } = words;
  const by = words.by ?? assessment.study.about.preparedBy;
  const candidate = assessment.candidates.find(({ id }) => id === words.choose);
  if (candidate === undefined) {
    const known = assessment.candidates.map(({ id }) => id);
    tell('--choose', say.unknownCandidate(words.choose, known, nearestName(words.choose, known)));
  } else checkWord(decision, candidate, assessment.baseline !== null, tell);

  if (because.trim() === '') tell('--because', say.noReason());
  if (because.length > longestReason) tell('--because', say.textTooLong(because, longestReason));
  if (by.length > longestName) tell('--by', say.textTooLong(by, longestName));
  const date = isoDate(words.date.trim());
  if (date === null) tell('--date', notADate(words.date));
  const lookAgain = words.lookAgain === null ? null : isoDate(words.lookAgain.trim());
  if (words.lookAgain !== null && lookAgain === null) tell('--look-again', notADate(words.lookAgain));
  if (date !== null && lookAgain !== null && lookAgain <= date)
    tell('--look-again', say.lookAgainTooEarly(lookAgain, date));
  if (supersedes !== null) checkSuperseded(supersedes, date, before, tell);
  checkStanding(words, assessment, before, tell);

  if (issues.some(({ severity }) => severity === 'error')) return { ok: false, issues };
  const choice = { id: candidate!.id, label: candidate!.label };
  return {
    ok: true,
    value: { decision, choice, because, by, date: date!, lookAgain, supersedes },
    issues,
  };
}

type Tell = (flag: string, trouble: Trouble) => void;

function checkWord(
  decision: Decision,
  candidate: CandidateAssessment,
  hasBaseline: boolean,
  tell: Tell,
): void {
  if (takesIt(decision) && candidate.passes !== true)
    tell('--choose', say.adoptsWhatFails(candidate.label, obstacles(candidate)));
  if (candidate.isBaseline && decision === 'adopt') tell('--decision', say.anotherWordMeant(candidate.label));
  if (!candidate.isBaseline && decision === 'keep' && hasBaseline)
    tell('--decision', say.keepsWhatIsNotBuilt(candidate.label));
}

/** Two decisions to build something for the same question, of which none replaces the other. */
function checkStanding(
  { decision, supersedes }: DecisionWords,
  { study }: Assessment,
  before: readonly LedgerEntry[],
  tell: Tell,
): void {
  if (!takesIt(decision)) return;
  const replaced = [supersedes, ...before.map((entry) => entry.supersedes)];
  const standing = before.filter(
    ({ id, question, decision: earlier }) =>
      question === study.about.question && takesIt(earlier) && !replaced.includes(id),
  );
  const last = standing.at(-1);
  if (last !== undefined) tell('--supersedes', say.standsBeside(last.id));
}

/** Whether something is built, or stays, by a decision. */
const takesIt = (decision: Decision): boolean => decision === 'adopt' || decision === 'keep';

function checkSuperseded(id: string, date: string | null, before: readonly LedgerEntry[], tell: Tell): void {
  const found = before.find((entry) => entry.id === id);
  if (found === undefined) {
    const known = before.map((entry) => entry.id);
    tell('--supersedes', say.unknownRecord(id, known, nearestName(id, known)));
    return;
  }
  const other = before.find((entry) => entry.supersedes === id);
  if (other !== undefined) tell('--supersedes', say.supersededAlready(id, other.id));
  if (date !== null && found.date > date) tell('--supersedes', say.supersedesLater(id, found.date));
}
