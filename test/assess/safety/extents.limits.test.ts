import { describe, expect, it } from 'vitest';
import { extentsOf } from '../../../src/assess/safety/extents.js';
import type { Feature } from '../../../src/study/feature.js';
import { plainStudy } from '../../simulate/plain-study.js';

const degrees = Math.PI / 180;

/** Room of a feature of one metre between two angles. */
function room(lower: number, upper: number, changes: Partial<Feature> = {}, leanRad = 0) {
  const plain = plainStudy();
  return extentsOf({
    ...plain,
    carrier: { ...plain.carrier, leanRad },
    feature: {
      ...plain.feature,
      ...{ tipDistanceM: 1, lowerStopPosition: lower * degrees, upperStopPosition: upper * degrees },
      ...changes,
    },
  });
}

describe('the room of a hinged feature', () => {
  it('from hanging down to standing up is twice its length high and its length wide', () => {
    const { open, folded, sweptHeightM, largestReachM } = room(-90, 90);
    expect([open.heightM, folded.heightM]).toEqual([1, -1]);
    expect(open.reachM).toBeCloseTo(0, 7);
    expect([sweptHeightM, largestReachM]).toEqual([2, 1]);
  });

  it('has its widest place between the stops where the feature passes level', () => {
    const { open, folded, largestReachM } = room(-30, 60);
    expect(open.reachM).toBeCloseTo(0.5, 12);
    expect(folded.reachM).toBeCloseTo(Math.sqrt(3) / 2, 12);
    expect(largestReachM).toBeCloseTo(1, 4);
  });

  it('has its highest point between the stops where the feature passes upright', () => {
    expect(room(60, 150).sweptHeightM).toBeCloseTo(0.5, 4);
  });

  it('rises with the lean of the carrier', () => {
    expect(room(0, 30, {}, 30 * degrees).open.heightM).toBeCloseTo(Math.sqrt(3) / 2, 12);
  });

  it('sweeps flat about an upright axis', () => {
    const flat = room(-90, 90, { axisTiltRad: Math.PI / 2 });
    expect(flat.sweptHeightM).toBeCloseTo(0, 12);
    expect(flat.largestReachM).toBeCloseTo(1, 12);
  });
});

describe('the room of a feature on a rail', () => {
  const rail = (inclineRad: number) =>
    room(0, 0, { kind: 'slide', lowerStopPosition: 0.05, upperStopPosition: 0.25, inclineRad });

  it('is its travel, up, level or between', () => {
    expect(rail(Math.PI / 2).sweptHeightM).toBeCloseTo(0.2, 12);
    expect(rail(Math.PI / 2).largestReachM).toBeCloseTo(0, 12);
    expect(rail(0).largestReachM).toBeCloseTo(0.2, 12);
    expect(rail(Math.PI / 6).open.heightM).toBeCloseTo(0.1, 12);
    expect(rail(0).tipDistanceM).toBeNull();
  });
});
