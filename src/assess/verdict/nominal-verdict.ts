import type { Study } from '../../study/study.js';
import type { Assessment, CandidateAssessment } from '../assessment.js';
import type { CalibrationOutcome, Verdict, VerdictKind } from '../certainty.js';
import { countText } from '../figures.js';
import { large } from './labels.js';

/** The verdict where nothing was drawn: the nominal answer, and nothing said of how sure it is. */
export function nominalVerdict(
  study: Study,
  ranked: readonly CandidateAssessment[],
  answer: Assessment['answer'],
): Verdict {
  const first = ranked[0];
  const leader = first?.passes === true ? first : null;
  return {
    kind: kindOf(study, leader),
    leader: leader?.id ?? null,
    change: [],
    sentence: answer.sentence,
    confidence: {
      probability: null,
      word: 'open',
      sentence: 'Nothing was drawn, so nothing is said of how sure this is.',
    },
    reasons: answer.reasons,
    overturnedBy: [],
  };
}

function kindOf({ baselineId }: Study, leader: CandidateAssessment | null): VerdictKind {
  if (leader === null) return 'none of these';
  if (baselineId === null) return 'choose';
  return leader.isBaseline ? 'keep' : 'redesign';
}

/** The same where measured and drawn agree in too few draws. */
export function unsureVerdict(
  study: Study,
  ranked: readonly CandidateAssessment[],
  answer: Assessment['answer'],
  { effectiveSampleSize, comparedDrawCount, contradiction }: CalibrationOutcome,
): Verdict {
  const count = Math.round(effectiveSampleSize);
  const why =
    contradiction === null
      ? `what was measured and what is believed of the inputs agree in too few draws, worth ${count} of ${countText(comparedDrawCount)}`
      : 'what was measured and what is computed cannot both be right';
  return {
    ...nominalVerdict(study, ranked, answer),
    confidence: {
      probability: null,
      word: 'open',
      sentence: `${large(why)}, so no bands and no probabilities are given.`,
    },
  };
}
