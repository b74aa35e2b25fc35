import { describe, expect, it } from 'vitest';
import { planDay } from '../../../src/assess/day/plan-day.js';
import { lesserChanges } from '../../../src/assess/lesser-changes/lesser-changes.js';
import { prepareCandidate } from '../../../src/simulate/candidate.js';
import type { DayBlock } from '../../../src/study/show.js';
import { randomStudy } from '../../simulate/random-study.js';
import { tools } from './tools.js';

const seeds = Array.from({ length: 24 }, (_, i) => i + 1);

/** Numbers that are not numbers, by where they stand. */
function strange(node: unknown, path = ''): string[] {
  if (typeof node === 'number') return Number.isFinite(node) ? [] : [path];
  if (typeof node === 'string') return /NaN|Infinity|undefined/.test(node) ? [`${path}: ${node}`] : [];
  if (node === undefined) return [path];
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, child]) => strange(child, `${path}.${key}`));
}

describe.each(seeds)('on random study %d', (seed) => {
  const { study: drawn } = randomStudy(seed);
  const candidate = drawn.candidates[0]!;
  const study = { ...drawn, baselineId: candidate.id, carrier: { ...drawn.carrier, worn: seed % 2 === 0 } };

  it('every figure and every sentence of the ladder makes sense', () => {
    const ladder = lesserChanges(study, candidate, tools);
    expect(strange(ladder)).toEqual([]);
    expect(JSON.parse(JSON.stringify(ladder))).toEqual(ladder);
  });

  it('no spring lowers the torque margin', () => {
    const { ladder, before } = lesserChanges(study, candidate, tools);
    const springs = ladder.filter(({ id }) => id === 'assist-spring' || id === 'anchored-coil');
    for (const { after } of springs)
      expect(after.torqueMarginRatio!).toBeGreaterThan(before.torqueMarginRatio! * 0.999);
    expect(prepareCandidate(study, candidate).model.load.spring).toEqual(study.feature.spring);
  });

  it('the day can be planned', () => {
    const block = (
      name: string,
      minutes: number,
      activity: DayBlock['activity'],
      swapAllowed = false,
    ): DayBlock => ({
      block: name,
      durationS: 60 * minutes,
      activity,
      swapAllowed,
      charger: seed % 3 === 0,
      note: '',
    });
    const day = [
      block('wait', 20, 'still', true),
      block('first', 40, 'show'),
      block('pause', 20, 'off', true),
      block('second', 60, 'show', seed % 4 === 0),
    ];
    const { nominal } = tools.simulate(study, candidate);
    const plan = planDay({ ...study, day, packsCarriedCount: 1 + (seed % 3) }, candidate, nominal)!;
    expect(strange(plan)).toEqual([]);
    for (const { socStartFraction, socEndFraction } of plan.segments) {
      expect(socStartFraction).toBeLessThanOrEqual(1);
      expect(socEndFraction).toBeGreaterThanOrEqual(plan.endSocFraction - 1e-9);
    }
    expect(plan.darkS > 0).toBe(['more-packs', 'stretch-too-long', 'cannot-play'].includes(plan.status));
  });
});
