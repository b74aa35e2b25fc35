import { driveTypes } from '../drives/registry.js';
import type { CandidateRun } from '../simulate/outcome.js';
import type { Study } from '../study/study.js';
import { answerOf } from './answer.js';
import { type Assessment, type CandidateAssessment, modelVersion, resultsFormat } from './assessment.js';
import { cautionsOf } from './cautions.js';
import type { DrawnFigures, Judged } from './criterion-values.js';
import { leaveOutBlanks } from './left-out.js';
import { limitsOf, passesAll } from './limits.js';
import { protectionOf } from './protection.js';
import { compareForRank, nonDominatedIds } from './ranking.js';
import { criterionOutcomes, scoreOf } from './scores.js';
import { nominalVerdict } from './verdict/nominal-verdict.js';

/** What the caller knows about the run and the study does not. */
export interface AssessmentContext {
  /** What was drawn, by candidate; left out without draws. */
  drawn?: ReadonlyMap<string, DrawnFigures>;
  /** Version of the program. */
  version: string;
  /** Hash over all input files. */
  inputHash: string;
  inputs: Assessment['inputs'];
}

/**
 * Judges every candidate of a study: limits with margins, worth and score on the user's own weights, rank,
 * cautions, protection, and the answer in words. Pure: the same runs give the same assessment.
 *
 * What needs draws or more simulations is left empty: how sure it is, the lesser changes, the day, what to measure
 * first.
 * @param runs one for each candidate, in the study's order
 */
export function assess(given: Study, runs: CandidateRun[], context: AssessmentContext): Assessment {
  const study = leaveOutBlanks(given, runs);
  const all = judgedOf(study, runs, context.drawn);
  const candidates = ranked(study, all);
  const inRank = candidates.map(({ id }) => all.find((judged) => judged.candidate.id === id) as Judged);
  const first = candidates[0];
  const answer = answerOf(study, candidates);
  return {
    format: resultsFormat,
    version: context.version,
    modelVersion,
    seed: study.seed,
    // Nominal figures only: no ensemble was drawn.
    draws: 0,
    inputHash: context.inputHash,
    study,
    believed: null,
    candidates,
    leader: first?.passes === true ? first.id : null,
    baseline: study.baselineId,
    answer,
    verdict: nominalVerdict(study, candidates, answer),
    certainty: null,
    lesserChanges: [],
    lesserChangesFrom: null,
    day: null,
    breakEven: null,
    nextMeasurements: [],
    cautions: cautionsOf(study, inRank, candidates),
    protection: inRank.map(({ candidate, run }) => protectionOf(study, candidate, run)),
    figuresGiven: givenCount(study),
    figuresAssumed: assumedCount(study, runs),
    inputs: context.inputs,
  };
}

/** Every candidate with its run, in the study's order. */
export function judgedOf(
  study: Study,
  runs: readonly CandidateRun[],
  drawn?: ReadonlyMap<string, DrawnFigures>,
): Judged[] {
  return study.candidates.map((candidate) => {
    const run = runs.find(({ id }) => id === candidate.id);
    if (run === undefined) throw new Error(`no run for candidate ${candidate.id}`);
    const figures = drawn?.get(candidate.id);
    return { study, candidate, run, ...(figures === undefined ? {} : { drawn: figures }) };
  });
}

function ranked(study: Study, all: Judged[]): CandidateAssessment[] {
  const candidates = all.map(judge);
  const nonDominated = nonDominatedIds(candidates, study.criteria);
  return candidates.sort(compareForRank).map((candidate, index) => ({
    ...candidate,
    rank: index + 1,
    nonDominated: nonDominated.has(candidate.id),
  }));
}

/** One candidate on its own; rank and dominance need the others and follow. */
function judge(judged: Judged): CandidateAssessment {
  const { study, candidate, run } = judged;
  const limits = limitsOf(judged);
  const criteria = criterionOutcomes(judged);
  return {
    id: candidate.id,
    label: candidate.label,
    type: candidate.kind,
    isBaseline: candidate.id === study.baselineId,
    rank: 0,
    passes: passesAll(limits),
    score: scoreOf(criteria),
    nonDominated: false,
    limits,
    criteria,
    findings: run.findings,
    assumed: run.assumed,
    motor: run.motor,
    nominal: run.nominal,
    uncertain: {},
    acceptability: [],
    series: run.series,
  };
}

/** How many numbers of the study its makers gave. */
function givenCount({ provenance }: Study): number {
  return provenance.filter(({ origin, value }) => origin === 'given' && typeof value === 'number').length;
}

/** How many numbers were assumed: when reading, or when computing a candidate; what all share counts once. */
function assumedCount({ provenance, candidates }: Study, runs: CandidateRun[]): number {
  const read = provenance.filter(({ origin, value }) => origin === 'assumed' && typeof value === 'number');
  const computed = runs.flatMap(({ id, assumed }) => {
    const kind = candidates.find((candidate) => candidate.id === id)?.kind;
    const ownFields = kind === undefined ? [] : driveTypes[kind].columns.map(({ name }) => name);
    const numbers = assumed.filter(({ value }) => typeof value === 'number');
    return numbers.map(({ field }) => (ownFields.includes(field) ? `${id}/${field}` : `/${field}`));
  });
  return new Set([...read.map(({ owner, field }) => `${owner ?? ''}/${field}`), ...computed]).size;
}
