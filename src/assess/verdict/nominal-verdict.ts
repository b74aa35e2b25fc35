import type { Study } from '../../study/study.js';
import type { Assessment, CandidateAssessment } from '../assessment.js';
import type { CalibrationOutcome, Verdict, VerdictKind } from '../certainty.js';
import { countText, listed } from '../figures.js';
import { large, small } from './labels.js';

/** The verdict where nothing was drawn: the nominal answer, and nothing said of how sure it is. */
export function nominalVerdict(
  study: Study,
  ranked: readonly CandidateAssessment[],
  answer: Assessment['answer'],
): Verdict {
  const first = ranked[0];
  const leader = first?.passes === true ? first : null;
  return {
    kind: kindOf(study, leader, first),
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

function kindOf(
  { baselineId }: Study,
  leader: CandidateAssessment | null,
  first: CandidateAssessment | undefined,
): VerdictKind {
  // What is not judged has not failed.
  if (leader === null) return first?.passes === null ? 'measure first' : 'none of these';
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
  const nominal = nominalVerdict(study, ranked, answer);
  const read = listed(study.measured.map(({ quantity }) => quantity.replaceAll('_', ' ')));
  return {
    ...nominal,
    // No advice rests on figures that what was seen speaks against.
    kind: 'measure first',
    sentence: `Check the measured ${read} first: ${why}. As the figures stand: ${small(answer.sentence)}`,
    confidence: {
      probability: null,
      word: 'open',
      sentence: `${large(why)}, so no bands and no probabilities are given.`,
    },
  };
}
