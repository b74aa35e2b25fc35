import { describe, expect, it } from 'vitest';
import { tipMotion } from '../../src/simulate/tip-motion.js';
import type { Study } from '../../src/study/study.js';
import { plainCandidate, plainCue, plainStudy } from './plain-study.js';

const degrees = Math.PI / 180;
const motionOf = (study: Study) => tipMotion(study, study.candidates[0]!);

describe('the tip in the show', () => {
  it('goes at travel over time times the peak of its law, where the drive keeps up', () => {
    // 60° in 2 s by a law that peaks at 15/8 of its mean, 0.35 m from the hinge.
    const peak = ((60 * degrees) / 2) * (15 / 8) * 0.35;
    // Read in the middle of sixtieths of the move, which miss the peak by less than a thousandth.
    const ratio = motionOf(plainStudy()).showSpeedMPerS! / peak;
    expect(ratio).toBeGreaterThan(0.999);
    expect(ratio).toBeLessThanOrEqual(1);
  });

  it('counts the cues that are played once', () => {
    const leadIn = [plainCue({ action: 'move', toPosition: 60 * degrees, durationS: 1 })];
    const { loop } = plainStudy().show;
    const [slow, quick] = [plainStudy(), plainStudy({ show: { leadIn, loop } })].map(motionOf);
    expect(quick!.showSpeedMPerS! / slow!.showSpeedMPerS!).toBeCloseTo(2, 3);
  });

  it('has no speed where a move cannot be made', () => {
    const weak = plainStudy({ candidates: [plainCandidate('position-servo', { stallEffort: 0.1 })] });
    expect(motionOf(weak).showSpeedMPerS).toBeNull();
  });
});

describe('the tip under a wrong command', () => {
  it('goes at most as fast as the drive without load on a full pack', () => {
    const frictionV = 0.2 * (7.4 / 3);
    const expected = ((6 * (8.4 - frictionV)) / (7.4 - frictionV)) * 0.35;
    expect(motionOf(plainStudy()).freeSpeedMPerS!).toBeCloseTo(expected, 6);
  });
});

describe('what the moving tip weighs', () => {
  it('is the inertia over the square of its distance, and the mass itself on a rail', () => {
    const { feature } = plainStudy();
    const point = plainStudy({ feature: { ...feature, inertiaKgM2: 0.049 } });
    expect(motionOf(point).tipMassKg).toBeCloseTo(0.049 / 0.35 ** 2, 12);
    const rail = plainStudy({
      feature: { ...feature, kind: 'slide', lowerStopPosition: 0, upperStopPosition: 0.2 },
      candidates: [
        plainCandidate('worm-gearmotor', { coupling: 'spool', spoolRadiusM: 0.03, couplingEfficiency: 0.95 }),
      ],
      show: { leadIn: [], loop: [plainCue({ action: 'move', toPosition: 0.1, durationS: 2 })] },
    });
    expect(motionOf(rail).tipMassKg).toBeCloseTo(0.3, 12);
    expect(motionOf(rail).crushDistanceM).toBeNull();
  });
});
