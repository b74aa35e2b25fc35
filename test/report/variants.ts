import type { Assessment } from '../../src/assess/assessment.js';
import { createAssessment, createCandidates } from './fixture.js';
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
