import type { Assessment } from '../../src/assess/assessment.js';
import { createAssessment, createCandidates, createDrawnAssessment } from './fixture.js';
import { createStudy } from './fixture-study.js';

/** Assessments at the edges: each must make a report without a gap. */
export const variants: Record<string, () => Assessment> = {
  'nobody leads': () => createAssessment({ leader: null }),
  'nothing exists today': () => withoutBaseline(),
  'who exists leads': () => createAssessment({ leader: 'servo-now' }),
  'one candidate alone': () => withCandidates(createCandidates().slice(0, 1)),
  'only a candidate that cannot move': () => ({
    ...withCandidates(createCandidates().slice(4)),
    leader: null,
    baseline: null,
  }),
  'no candidate at all': () => ({ ...withCandidates([]), leader: null, baseline: null }),
  'no target, no measurement, no caution': () => bare(),
  'twenty candidates': () => withCandidates(many(20)),
  'everything drawn': () => createDrawnAssessment(),
  'drawn, but too few draws agree with what was measured': () => withoutBands(),
  'drawn, nothing exists today': () => drawnWithoutBaseline(),
  'labels without a space': () =>
    withCandidates(createCandidates().map((one) => ({ ...one, label: 'x'.repeat(90) }))),
};

function withCandidates(candidates: Assessment['candidates']): Assessment {
  return createAssessment({ candidates, study: createStudy(candidates) });
}

function withoutBaseline(): Assessment {
  const candidates = createCandidates().map((one) => ({ ...one, isBaseline: false }));
  return { ...withCandidates(candidates), baseline: null };
}

function bare(): Assessment {
  const assessment = createAssessment({ nextMeasurements: [], cautions: [], protection: [], inputs: [] });
  const study = { ...assessment.study, targetRuntimeS: null, provenance: [] };
  return { ...assessment, study, answer: { sentence: 'There is no candidate to compare.', reasons: [] } };
}

function many(count: number): Assessment['candidates'] {
  const kinds = createCandidates();
  return Array.from({ length: count }, (_, index) => {
    const one = kinds[index % kinds.length]!;
    return { ...one, id: `${one.id}-${index}`, label: `${one.label} ${index + 1}`, rank: index + 1 };
  });
}

/** What an assessment looks like when calibration leaves no bands. */
function withoutBands(): Assessment {
  const drawn = createDrawnAssessment();
  const certainty = drawn.certainty!;
  const unknown = Object.entries(certainty.candidates).map(([id, candidate]) => [
    id,
    {
      ...candidate,
      ...{ uncertain: {}, passProbability: null, passesOnPaper: false, leadProbability: null, score: null },
      ...{ acceptability: [], centralWeights: null, confidenceFactor: null },
      limitProbabilities: candidate.limitProbabilities.map(() => null),
    },
  ]);
  return {
    ...drawn,
    candidates: drawn.candidates.map((one) => ({ ...one, uncertain: {}, acceptability: [] })),
    certainty: {
      ...certainty,
      ...{ pairwise: [], ties: [], pointsOfView: [], sensitivity: null, nominalApart: [], runDownBands: [] },
      candidates: Object.fromEntries(unknown),
      calibration: {
        measured: [
          {
            quantity: 'runtime',
            measured: 5400,
            before: { p10: 2400, median: 3400, p90: 4300, occursFraction: 1 },
            after: null,
            unit: 'min',
          },
        ],
        effectiveSampleSize: 41,
        comparedDrawCount: 32768,
        temper: 0.3,
        contradiction: { smallestChiSquare: 14.2, bound: 6.6 },
        bandsGiven: false,
        moved: [],
      },
    },
    breakEven: null,
  };
}

function drawnWithoutBaseline(): Assessment {
  const drawn = createDrawnAssessment();
  return {
    ...drawn,
    ...{ baseline: null, lesserChanges: [], lesserChangesFrom: null, day: null, breakEven: null },
    candidates: drawn.candidates.map((one) => ({ ...one, isBaseline: false })),
    verdict: { ...drawn.verdict, kind: 'choose' },
  };
}
