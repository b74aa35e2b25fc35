import { describe, expect, it } from 'vitest';
import { EnsembleRun } from '../../../src/simulate/ensemble/run-ensemble.js';
import { loadOf } from '../../../src/simulate/mechanics.js';
import type { Feature } from '../../../src/study/feature.js';
import { plainStudy } from '../plain-study.js';

/** The feature's load where every uncertain number is drawn as its nominal figure, and factors as one. */
function loadsOf(parts: Partial<Feature>) {
  const study = plainStudy({ feature: { ...plainStudy().feature, ...parts } });
  const atNominal = new EnsembleRun(study, study.candidates, 1, study.seed, ({ nominal }) =>
    Float64Array.of(nominal),
  );
  const { sheet } = study.candidates[0]!;
  return { nominal: loadOf(study, sheet), drawn: loadOf(atNominal.studyAt(0), sheet) };
}

describe('a draw of nothing but nominal figures has the nominal load', () => {
  it.each<[string, Partial<Feature>]>([
    ['weighed and balanced', {}],
    ['with a scale under its tip', { tipScaleKg: 0.14 }],
    ['with a scale under its tip that disagrees with the balance point', { tipScaleKg: 0.2 }],
    ['of a point mass with a scale under its tip', { tipScaleKg: 0.2, shape: 'point' }],
    ['of a rod', { shape: 'rod' }],
    ['of known inertia', { inertiaKgM2: 0.01, tipScaleKg: 0.2 }],
  ])('of a feature %s', (_, parts) => {
    const { nominal, drawn } = loadsOf(parts);
    expect(drawn).toEqual(nominal);
  });
});
