import { describe, expect, it } from 'vitest';
import { figuresOf, gainBetween, perHundredGrams } from '../../../src/assess/lesser-changes/figures-of.js';
import { massShaved, shavedMassKg, without } from '../../../src/assess/lesser-changes/mass-shaved.js';
import type { Setup } from '../../../src/assess/lesser-changes/proposal.js';
import { loadOf } from '../../../src/simulate/mechanics.js';
import { plainCandidate } from '../../simulate/plain-study.js';
import { proposed, reasonOf, runOf, setupOf, tools, withFeature } from './tools.js';

const gravity = 9.80665;
const degrees = Math.PI / 180;

/** What the mass shaved off a setup gains, and the same per 100 g. */
function gains(setup: Setup) {
  const proposal = proposed(massShaved, setup);
  const before = figuresOf({ ...setup, run: tools.simulate(setup.study, setup.candidate) }, 1, 0);
  const gain = gainBetween(before, figuresOf({ ...proposal.setup, run: runOf(proposal) }, 1, 0));
  return { gain, perHundred: perHundredGrams(gain, proposal.burden.massKg)!, proposal };
}

describe('mass shaved at the tip of a hinge', () => {
  it('takes m·g·L·cos θ per 100 g off the hold effort, whatever the feature weighs', () => {
    for (const massKg of [0.3, 0.7, 2]) {
      const { perHundred } = gains(withFeature({ massKg }));
      // Held at 60°, 350 mm from hinge to tip, by one drive that stalls at 2.5 N·m.
      const expected = (0.1 * gravity * 0.35 * Math.cos(60 * degrees)) / 2.5;
      expect(perHundred.holdEffortRatio).toBeCloseTo(expected, 9);
    }
  });

  it('takes mass × distance off the first moment and mass × distance² off the inertia', () => {
    const setup = withFeature({ massKg: 1, shape: 'rod', tipDistanceM: 0.5, balanceDistanceM: 0.25 });
    const load = (of: Setup) => loadOf(of.study, of.candidate.sheet);
    const [before, after] = [load(setup), load(without(setup, 0.04))];
    expect(before.gravityEffort - after.gravityEffort).toBeCloseTo(0.04 * gravity * 0.5, 12);
    expect(before.inertia - after.inertia).toBeCloseTo(0.04 * 0.5 ** 2, 12);
  });

  it('is read off the scale under the tip gram by gram', () => {
    const setup = withFeature({ tipScaleKg: 0.2 });
    expect(without(setup, 0.03).study.feature.tipScaleKg).toBeCloseTo(0.17, 12);
    expect(gains(setup).perHundred.holdEffortRatio).toBeCloseTo(
      (0.1 * gravity * 0.35 * Math.cos(60 * degrees)) / 2.5,
      9,
    );
  });

  it('leaves what rides on the feature alone', () => {
    const riding = { ridesOnFeature: true, rideDistanceM: 0.1, massKg: 0.08 };
    const setup = setupOf({ candidates: [plainCandidate('position-servo', riding)] });
    const load = (of: Setup) => loadOf(of.study, of.candidate.sheet);
    expect(load(setup).inertia - load(without(setup, 0.01)).inertia).toBeCloseTo(0.01 * 0.35 ** 2, 12);
  });

  it('is at most 100 g, a tenth of the feature, a quarter of its moment and half of its inertia', () => {
    expect(shavedMassKg(withFeature({ massKg: 5, balanceDistanceM: 0.3, tipDistanceM: 0.4 }))).toBeCloseTo(
      0.1,
      12,
    );
    expect(shavedMassKg(withFeature({ massKg: 0.5, balanceDistanceM: 0.3, tipDistanceM: 0.4 }))).toBeCloseTo(
      0.05,
      12,
    );
    const slender = withFeature({ massKg: 1, balanceDistanceM: 0.1, tipDistanceM: 1 });
    // 0.25·m·r/L = 25 g, and half of 1.33·m·r² over L² = 6.65 g, less than two steps of 5 g.
    expect(shavedMassKg(slender)).toBeCloseTo(0.00665, 12);
    expect(
      shavedMassKg(withFeature({ inertiaKgM2: 1, massKg: 1, balanceDistanceM: 0.1, tipDistanceM: 1 })),
    ).toBeCloseTo(0.025, 12);
  });

  it('is lighter to carry, costs no body mass, and says where it then balances', () => {
    const { proposal, gain } = gains(withFeature({ massKg: 1 }));
    expect(proposal.burden.massKg).toBeLessThan(0);
    expect(proposal.addedBodyMassKg).toBe(0);
    expect(gain.holdPowerW).toBeGreaterThan(0);
    expect(proposal.sideEffects(null as never, null as never).join(' ')).toMatch(
      /balances 1\d\d mm from the hinge/,
    );
  });
});

describe('mass shaved on a rail', () => {
  it('takes its weight off the hold effort', () => {
    const setup = withFeature(
      { kind: 'slide', massKg: 2, lowerStopPosition: 0, upperStopPosition: 2 },
      {
        candidates: [plainCandidate('position-servo', { coupling: 'spool', spoolRadiusM: 0.03 })],
      },
    );
    // A cord on a drum of 30 mm: weight × radius over the stall effort.
    expect(gains(setup).perHundred.holdEffortRatio).toBeCloseTo((0.1 * gravity * 0.03) / 2.5, 9);
  });

  it('is left out where there is nothing to shave', () => {
    expect(reasonOf(massShaved.propose(withFeature({ kind: 'slide', massKg: 0 })))).toMatch(/too little/);
  });
});
