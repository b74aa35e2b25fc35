import type { Assessment, CandidateAssessment } from '../assess/assessment.js';
import { blanksOf } from '../assess/blanks.js';
import type { Certainty } from '../assess/certainty.js';
import { adviceData } from './measure-text.js';

/** What `check` says, for programs: the same as its text, in SI. */
export function checkData(assessment: Assessment): object {
  const { study, certainty, verdict, figuresGiven, figuresAssumed, nextMeasurements } = assessment;
  return {
    project: study.about.project,
    leader: assessment.leader,
    verdict,
    candidates: assessment.candidates.map((candidate) => candidateData(candidate, certainty)),
    calibration: certainty?.calibration ?? null,
    fillInFirst: blanksOf(assessment),
    figuresGiven,
    figuresAssumed,
    nextMeasurements: nextMeasurements.map(adviceData),
  };
}

function candidateData(candidate: CandidateAssessment, certainty: Certainty | null): object {
  const { id, label, type, rank, passes, score, limits, findings } = candidate;
  const drawn = certainty?.candidates[id];
  return {
    ...{ id, label, type, rank, passes, score, limits, findings },
    passProbability: drawn?.passProbability ?? null,
    passesOnPaper: drawn?.passesOnPaper ?? null,
  };
}
