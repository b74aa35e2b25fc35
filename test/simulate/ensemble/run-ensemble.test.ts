import { describe, expect, it } from 'vitest';
import { beginDraws } from '../../../src/assess/certainty/draws.js';
import { outcomeIndex } from '../../../src/simulate/ensemble/ensemble.js';
import { EnsembleRun } from '../../../src/simulate/ensemble/run-ensemble.js';
import type { Provenance } from '../../../src/study/provenance.js';
import type { Study } from '../../../src/study/study.js';
import { plainCandidate, plainStudy } from '../plain-study.js';

function spreadOn(path: string, value: number, halfWidth: number, owner: string | null = null): Provenance {
  const spread = { shape: 'normal' as const, halfWidth };
  return {
    path,
    field: path,
    owner,
    origin: 'given',
    written: null,
    shown: '',
    value,
    basis: '',
    spread,
    place: null,
  };
}

function drawnStudy(): Study {
  const study = plainStudy({
    candidates: [
      plainCandidate('position-servo', {}, 'one'),
      plainCandidate('position-servo', { stallEffort: 3 }, 'two'),
    ],
    loads: [
      {
        id: 'eyes',
        label: 'eyes',
        powerW: 5,
        voltageV: 12,
        converterEfficiency: 0.9,
        idlePowerW: 0,
        drawnWhen: 'always',
        note: '',
      },
    ],
    drawsCount: 256,
  });
  study.provenance = [
    spreadOn('feature.massKg', 0.3, 0.03),
    spreadOn('loads.eyes.powerW', 5, 0.5),
    spreadOn('pack.capacityC', 7920, 800),
    spreadOn('candidates.one.sheet.stallEffort', 2.5, 0.3, 'one'),
    spreadOn('candidates.two.sheet.stallEffort', 3, 0.3, 'two'),
  ];
  return study;
}

describe('an ensemble of draws', () => {
  const study = drawnStudy();
  const whole = beginDraws(study).finish().ensemble;

  it('is the same on every run, and however the range of draws is split', () => {
    const again = beginDraws(drawnStudy()).finish().ensemble;
    expect(again.outcomes).toEqual(whole.outcomes);
    const split = new EnsembleRun(study, study.candidates, 256);
    const outcomes = split.emptyOutcomes();
    for (const [from, to] of [
      [200, 256],
      [0, 7],
      [7, 200],
    ] as const)
      split.run(from, to, outcomes);
    expect(outcomes).toEqual(whole.outcomes);
  });

  it('leaves the study as it was', () => {
    expect(study).toEqual(drawnStudy());
  });

  it('gives both candidates the same feature, pack and loads in every draw', () => {
    const shared = whole.inputs.filter(({ shared }) => shared).map(({ path }) => path);
    expect(shared).toContain('feature.massKg');
    expect(shared).toContain('loads.eyes.powerW');
    const [one, two] = whole.outcomes;
    const masses = [one!, two!].map((columns) => columns[outcomeIndex.featureMassKg]!);
    expect(masses[0]).toEqual(masses[1]);
    expect(masses[0]).toEqual(whole.inputs.find(({ path }) => path === 'feature.massKg')!.values);
  });

  it('has the spread it was asked for: 95 % of the masses within ±30 g', () => {
    const { values } = whole.inputs.find(({ path }) => path === 'feature.massKg')!;
    const inside = values.filter((massKg) => Math.abs(massKg - 0.3) <= 0.03).length;
    expect(inside / values.length).toBeGreaterThan(0.93);
    expect(inside / values.length).toBeLessThan(0.97);
  });

  it('answers more charge with a longer run', () => {
    const charges = whole.inputs.find(({ path }) => path === 'pack.capacityC')!.values;
    const runs = whole.outcomes[0]![outcomeIndex.runtimeS]!;
    const rich = runs.filter((_, draw) => charges[draw]! > 8000);
    const poor = runs.filter((_, draw) => charges[draw]! < 7800);
    const mean = (list: Float64Array) => list.reduce((sum, value) => sum + value, 0) / list.length;
    expect(mean(rich)).toBeGreaterThan(1.03 * mean(poor));
  });

  it('records how the draws were made', () => {
    expect(whole.scheme.seed).toBe(1);
    expect(whole.scheme.generator).toMatch(/sobol/);
    expect(whole.scheme.sobolPaths.length).toBeGreaterThan(4);
  });
});
