import { describe, expect, it } from 'vitest';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { plainCandidate, plainCue, plainStudy } from './plain-study.js';

const degrees = Math.PI / 180;

/** The arm of a published-style linkage exercise: pivots at 120 and 80 mm, level at an included angle of 85°. */
function strutStudy(fromDeg: number, toDeg: number, sheet = {}) {
  const base = plainStudy();
  return plainStudy({
    feature: {
      ...base.feature,
      massKg: 1.2,
      balanceDistanceM: 0.25,
      tipDistanceM: 0.6,
      lowerStopPosition: fromDeg * degrees,
      upperStopPosition: toDeg * degrees,
    },
    show: {
      leadIn: [],
      loop: [
        plainCue({
          action: 'move',
          fromPosition: fromDeg * degrees,
          toPosition: toDeg * degrees,
          durationS: 8,
        }),
        plainCue({ action: 'hold', fromPosition: toDeg * degrees, durationS: 8 }),
        plainCue({
          action: 'move',
          fromPosition: toDeg * degrees,
          toPosition: fromDeg * degrees,
          durationS: 8,
        }),
      ],
    },
    candidates: [
      plainCandidate('screw-actuator', {
        noLoadSpeed: 0.03,
        stallEffort: 250,
        stallCurrentA: 5,
        coupling: 'strut',
        strutFrameArmM: 0.12,
        strutFeatureArmM: 0.08,
        strutLevelAngleRad: 85 * degrees,
        strokeM: 0.11,
        ...sheet,
      }),
    ],
  });
}

const failuresOf = (study: ReturnType<typeof strutStudy>) =>
  simulateCandidate(study, study.candidates[0]!).failures;

describe('a strut', () => {
  it('that must grow 2.33 times from 40° to 130° is beyond any single rod drive (closed form)', () => {
    const [failure] = failuresOf(strutStudy(-45, 45)).filter(({ code }) => code === 'linkage');
    expect(failure!.value).toBeCloseTo(2.33, 2);
  });

  it('is refused for a stroke that ends before the highest cue, with position and length', () => {
    const failures = failuresOf(strutStudy(-20, 30, { closedLengthM: 0.1, strokeM: 0.05 }));
    const failure = failures.find(({ reason }) => reason.includes('fully out'))!;
    expect(failure.position! / degrees).toBeCloseTo(30, 6);
    expect(failure.reason).toContain('150 mm');
  });

  it('is refused when the lowest cue needs it shorter than it can be', () => {
    const failures = failuresOf(strutStudy(-20, 30, { closedLengthM: 0.13, strokeM: 0.1 }));
    expect(failures.some(({ reason }) => reason.includes('shorter than its closed length'))).toBe(true);
  });

  it('is refused where it passes its dead centre', () => {
    const failures = failuresOf(strutStudy(-60, 98, { strutLevelAngleRad: 85 * degrees }));
    expect(failures.some(({ reason }) => reason.includes('dead centre'))).toBe(true);
  });

  it('that fits is accepted, and a mechanical stop out of its reach is told', () => {
    const study = strutStudy(-20, 30, { closedLengthM: 0.095, strokeM: 0.1 });
    expect(failuresOf(study).filter(({ code }) => code === 'linkage')).toEqual([]);
    study.feature.upperStopPosition = 80 * degrees;
    const run = simulateCandidate(study, study.candidates[0]!);
    expect(run.findings.map(({ code }) => code)).toContain('stop-out-of-reach');
  });

  it('with blank pivots gets some that fit its stroke and closed length, marked as assumed', () => {
    const study = strutStudy(-20, 30, { strutFrameArmM: null, closedLengthM: 0.12, strokeM: 0.06 });
    const run = simulateCandidate(study, study.candidates[0]!);
    expect(run.failures.filter(({ code }) => code === 'linkage')).toEqual([]);
    const arm = run.assumed.find(({ field }) => field === 'strut_frame_arm')!;
    expect(arm.basis).toContain('fits stroke and closed length');
  });

  it('with blank pivots and no length is not judged, and nothing is said to fit', () => {
    const study = strutStudy(-20, 30, { strutFrameArmM: null, closedLengthM: null, strokeM: 0.06 });
    const run = simulateCandidate(study, study.candidates[0]!);
    expect(run.failures.filter(({ code }) => code === 'linkage')).toMatchObject([
      { missing: 'closed_length' },
    ]);
    expect(run.assumed.find(({ field }) => field === 'strut_feature_arm')!.basis).toContain(
      'by the stroke alone',
    );
  });

  it('for which no pivots fit says so of those that show where it fails', () => {
    const study = strutStudy(-20, 30, { strutFrameArmM: null, closedLengthM: 1.5, strokeM: 0.06 });
    const run = simulateCandidate(study, study.candidates[0]!);
    expect(run.failures.some(({ code, missing }) => code === 'linkage' && missing === undefined)).toBe(true);
    expect(run.assumed.find(({ field }) => field === 'strut_frame_arm')!.basis).toMatch(/^no pivots fit/);
  });
});
