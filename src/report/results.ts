import type { Assessment } from '../assess/assessment.js';
import type { CandidateCertainty, Certainty } from '../assess/certainty.js';

/** What the draws add, without what stands with each candidate already. */
type CertaintyResults = Omit<Certainty, 'candidates'> & {
  candidates: Record<string, Omit<CandidateCertainty, 'uncertain' | 'acceptability'>>;
};

/**
 * The results contract: the assessment without the texts of the input files, which travel beside it. Columns of draws
 * never get here: bands and shares tell what they hold; nor what they believe of each input, which follows from them.
 */
export type Results = Omit<Assessment, 'inputs' | 'certainty' | 'believed'> & {
  inputs: { name: string; sha256: string }[];
  certainty: CertaintyResults | null;
};

/** Turns an assessment into what results.json holds. */
export function toResults({ believed: _, ...assessment }: Assessment): Results {
  return {
    ...assessment,
    inputs: assessment.inputs.map(({ name, sha256 }) => ({ name, sha256 })),
    certainty: assessment.certainty && certaintyResults(assessment.certainty),
  };
}

function certaintyResults(certainty: Certainty): CertaintyResults {
  const candidates = Object.entries(certainty.candidates).map(([id, candidate]) => {
    const { uncertain: _, acceptability: __, ...rest } = candidate;
    return [id, rest] as const;
  });
  return { ...certainty, candidates: Object.fromEntries(candidates) };
}
