import { type OutcomeName, outcomeNames } from '../../simulate/ensemble/ensemble.js';
import type { CandidateRun, NominalOutcome } from '../../simulate/outcome.js';
import type { ViewWeights } from '../../study/choosing.js';
import type { CandidateAssessment } from '../assessment.js';
import type { Band, CandidateCertainty, Certainty } from '../certainty.js';
import { bandOf } from './bands.js';
import { ownStandings, pairwiseOf, pointsOfView, randomStandings, tiesOf } from './choosing.js';
import type { DrawnStudy, NominalJudgement } from './drawn-study.js';
import type { Draws } from './draws.js';
import { passesOnPaper } from './findings.js';

/** What the certainty is made from. */
export interface CertaintyParts {
  seed: number;
  /** In rank order. */
  ranked: readonly CandidateAssessment[];
  /** In the order of the draws. */
  nominal: readonly NominalJudgement[];
  draws: Draws;
  drawn: DrawnStudy;
  views: readonly ViewWeights[];
  /** Random weights and other people's are for the report only. */
  depth: 'ranking' | 'report';
}

/** Everything the draws say, what would change the order and the run-down left for others to add. */
export function certaintyOf(parts: CertaintyParts): Certainty {
  const { ranked, nominal, draws, drawn, views, seed } = parts;
  const { ensemble, calibration } = draws;
  const scheme = { generator: ensemble.scheme.generator, sobolInputs: ensemble.scheme.sobolPaths.length };
  const head = { draws: ensemble.drawCount, ...scheme, calibration, sensitivity: null, runDownBands: [] };
  if (calibration?.bandsGiven === false) return withoutBands(head, ranked);
  const own = ownStandings(drawn);
  const random = parts.depth === 'report' ? randomStandings(drawn, seed) : null;
  const candidates = ensemble.candidateIds.map((id, index): [string, CandidateCertainty] => {
    const { passProbability, limitProbabilities } = drawn.limits[index]!;
    const ranks = random?.ranks[index];
    const central = ranks?.centralWeightScores ?? null;
    const assessed = ranked.find((candidate) => candidate.id === id)!;
    return [
      id,
      {
        uncertain: bandsOf(ensemble.outcomes[index]!),
        passProbability,
        limitProbabilities,
        passesOnPaper: passesOnPaper(assessed.passes, passProbability),
        leadProbability: own[index]!.leadFraction,
        score: bandOf(drawn.scores[index]!),
        acceptability: [...(ranks?.rankFractions ?? [])],
        centralWeights:
          central === null
            ? null
            : Object.fromEntries(drawn.criteria.map(({ id: of }, k) => [of, central[k]!])),
        confidenceFactor: ranks?.confidenceFraction ?? null,
      },
    ];
  });
  const known = Object.fromEntries(candidates);
  const tied = ranked.filter(({ passes }) => passes !== false).map(({ id }) => id);
  return {
    ...head,
    candidates: known,
    pairwise: pairwiseOf(ensemble.candidateIds, own),
    ties: tiesOf(tied, ensemble.candidateIds, own),
    pointsOfView: parts.depth === 'report' ? pointsOfView(views, nominal, ensemble) : [],
    nominalApart: nominalApart(nominal, known),
    weightsDrawn: random?.weightsDrawn ?? 'any',
  };
}

type Head = Pick<
  Certainty,
  'draws' | 'generator' | 'sobolInputs' | 'calibration' | 'sensitivity' | 'runDownBands'
>;

/** Too few draws agree with what was measured: nothing is said of how sure the figures are. */
function withoutBands(head: Head, ranked: readonly CandidateAssessment[]): Certainty {
  const unknown = (candidate: CandidateAssessment): CandidateCertainty => ({
    uncertain: {},
    passProbability: null,
    limitProbabilities: candidate.limits.map(() => null),
    passesOnPaper: false,
    leadProbability: null,
    score: null,
    acceptability: [],
    centralWeights: null,
    confidenceFactor: null,
  });
  return {
    ...head,
    candidates: Object.fromEntries(ranked.map((candidate) => [candidate.id, unknown(candidate)])),
    pairwise: [],
    ties: [],
    pointsOfView: [],
    nominalApart: [],
    weightsDrawn: 'any',
  };
}

function bandsOf(columns: readonly Float64Array[]): Partial<Record<OutcomeName, Band>> {
  return Object.fromEntries(
    outcomeNames.flatMap((name, index) => {
      const band = bandOf(columns[index]!);
      return band === null ? [] : [[name, band]];
    }),
  );
}

/** Outcomes that the ranking shows, with their nominal figures. */
const compared = [
  'runtimeS',
  'holdPowerW',
  'meanPackCurrentA',
  'torqueMarginRatio',
  'windingTemperatureK',
] as const satisfies readonly (OutcomeName & keyof NominalOutcome)[];

/** A nominal figure this close to an end of its band, as a share of the figure, is not called outside it. */
const rounding = 0.01;

/** A nominal figure further than this from the middle of its band, as a share of the larger, is told beside it. */
const telling = 0.15;

/**
 * Nominal figures outside the 10–90 % band of their own draws, or far from its middle: listings flatter, and spreads
 * are skewed for it. Who follows the nominal figures would miss the median that the ranking shows.
 */
function nominalApart(
  nominal: readonly NominalJudgement[],
  candidates: Certainty['candidates'],
): Certainty['nominalApart'] {
  return nominal.flatMap(({ judged: { run } }) =>
    compared.flatMap((outcome) => {
      const figure = (run as CandidateRun).nominal[outcome];
      const band = candidates[run.id]!.uncertain[outcome];
      if (figure === null || band === undefined) return [];
      const little = rounding * Math.abs(figure);
      const isInside = figure >= band.p10 - little && figure <= band.p90 + little;
      const larger = Math.max(Math.abs(figure), Math.abs(band.median));
      if (isInside && Math.abs(figure - band.median) <= telling * larger) return [];
      return [{ candidate: run.id, outcome, nominal: figure, median: band.median }];
    }),
  );
}
