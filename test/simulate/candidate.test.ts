import { describe, expect, it } from 'vitest';
import type { DriveSheet } from '../../src/drives/sheet.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import type { Study } from '../../src/study/study.js';
import { plainCandidate, plainCue, plainPack, plainStudy } from './plain-study.js';

const degrees = Math.PI / 180;
const wormSheet = {
  noLoadSpeed: 3,
  stallEffort: 2.5,
  stallCurrentA: 4,
  noLoadCurrentA: 0.3,
  poweredAtHold: false,
  poweredAtRest: false,
  idleCurrentA: 0,
};

function runOf(study: Study) {
  return simulateCandidate(study, study.candidates[0]!);
}

describe('a self-locking worm drive', () => {
  it('takes no drive power at hold or rest; a position-hold servo is powered all the time (common practice)', () => {
    const worm = runOf(plainStudy({ candidates: [plainCandidate('worm-gearmotor', wormSheet)] }));
    expect(worm.nominal.locking).not.toBe('does-not-hold');
    expect(worm.nominal.holdPackCurrentA).toBe(0);
    expect(worm.nominal.holdCurrentUsed).toBe('unpowered');
    expect(worm.nominal.energy!.drivesHoldingJ + worm.nominal.energy!.drivesRestingJ).toBe(0);
    const servo = runOf(plainStudy());
    expect(servo.nominal.holdPackCurrentA).toBeGreaterThan(servo.motor.noLoadCurrentA * 0.05);
    expect(servo.nominal.energy!.drivesIdleJ).toBeGreaterThan(0);
  });

  it('that locks at rest only is held powered on a body, and the report says why', () => {
    const candidate = plainCandidate('worm-gearmotor', { ...wormSheet, stallEffort: 3.6 });
    const standing = plainStudy({ candidates: [candidate] });
    expect(runOf(standing).nominal.locking).toBe('holds-at-rest');
    expect(runOf(standing).nominal.holdCurrentUsed).toBe('unpowered');
    const worn = runOf({ ...standing, carrier: { ...standing.carrier, worn: true, activity: 'walk' } });
    expect(worn.nominal.holdCurrentUsed).not.toBe('unpowered');
    expect(worn.findings.map(({ code }) => code)).toContain('unpowered-hold-not-honoured');
  });
});

describe('the hold current of a position-hold servo', () => {
  const study = plainStudy({
    feature: { ...plainStudy().feature, massKg: 0.8 },
    candidates: [plainCandidate('position-servo', { holdCurrentA: 0.9, holdEffort: 1.2 })],
  });

  it('stands beside the linear rule and the measurement, and the measured one is used', () => {
    const { nominal } = runOf(study);
    expect(nominal.holdCurrentUsed).toBe('measured');
    // 0.8 kg at 0.15 m, held at 60°: the linear rule takes that share of the stall current.
    const effortNm = 0.8 * 9.80665 * 0.15 * Math.cos(60 * degrees);
    expect(nominal.holdCurrentLinearRuleA).toBeCloseTo((3 * effortNm) / 2.5, 12);
    expect(nominal.holdPackCurrentA).toBeCloseTo(nominal.holdCurrentMeasuredA! + 0.01, 12);
  });

  it('equals the measurement when the study holds the very effort it was measured at', () => {
    const effortNm = 0.8 * 9.80665 * 0.15 * Math.cos(60 * degrees);
    const same = plainCandidate('position-servo', { holdCurrentA: 0.9, holdEffort: effortNm });
    const { nominal } = runOf({ ...study, candidates: [same] });
    expect(nominal.holdPackCurrentA).toBeCloseTo(0.9, 9);
  });

  const measured = (sheet: Partial<DriveSheet>) =>
    runOf({ ...study, candidates: [plainCandidate('position-servo', sheet)] });
  const unmeasured = measured({});

  it('by the pulse model is the same figure whatever was measured', () => {
    const byModelA = unmeasured.nominal.holdCurrentPulseModelA;
    expect(byModelA).toBeGreaterThan(0.01);
    for (const holdCurrentA of [0.01, 0.02, 0.9]) {
      const { nominal } = measured({ holdCurrentA, holdEffort: 1.2 });
      expect(nominal.holdCurrentPulseModelA).toBeCloseTo(byModelA, 12);
    }
  });

  it.each([
    ['no effort', 0],
    ['an effort that counts as balance', 1e-7],
  ])('measured at %s says nothing of a load: the model is used, and the report says so', (_, holdEffort) => {
    const run = measured({ holdCurrentA: 0.3, holdEffort });
    expect(run.nominal.holdCurrentUsed).toBe('pulse-model');
    expect(run.nominal.holdCurrentMeasuredA).toBeUndefined();
    expect(run.nominal.runtimeS).toBe(unmeasured.nominal.runtimeS);
    expect(run.findings).toContainEqual(
      expect.objectContaining({ code: 'hold-measured-unloaded', severity: 'odd', field: 'hold_effort' }),
    );
  });

  it.each([
    ['odd where friction alone may hold the load', 0.1, 'odd'],
    ['impossible where friction is too weak for that', 1.2, 'impossible'],
  ])('measured as no more than the idle current is taken, and called %s', (_, holdEffort, severity) => {
    const run = measured({ holdCurrentA: 0.01, holdEffort });
    expect(run.nominal.holdPackCurrentA).toBeCloseTo(0.01, 12);
    expect(run.findings).toContainEqual(
      expect.objectContaining({ code: 'hold-costs-nothing', severity, field: 'hold_current' }),
    );
  });

  it('measured above what the effort can take with all friction against it is taken, and the report says so', () => {
    // 0.05 N·m of 2.5 N·m at stall and 0.2 A of friction: a third of an ampere at the very most.
    const run = measured({ holdCurrentA: 1.5, holdEffort: 0.05 });
    expect(run.findings).toContainEqual(
      expect.objectContaining({ code: 'hold-above-model', severity: 'odd', field: 'hold_current' }),
    );
  });

  it('raises no finding when it can be', () => {
    const codes = measured({ holdCurrentA: 0.9, holdEffort: 1.2 }).findings.map(({ code }) => code);
    expect(codes.filter((code) => code.startsWith('hold-'))).toEqual([]);
  });
});

describe('a move', () => {
  it('on a switched drive takes travel over the speed at which current and back voltage use up the bus', () => {
    const lift = plainCue({ action: 'move', fromPosition: 0, toPosition: 0.2, durationS: 10 });
    const lower = plainCue({ action: 'move', fromPosition: 0.2, toPosition: 0, durationS: 10 });
    const base = plainStudy();
    const study = plainStudy({
      feature: { ...base.feature, kind: 'slide', massKg: 1, upperStopPosition: 0.2 },
      show: { leadIn: [], loop: [lift, lower] },
      candidates: [
        plainCandidate('screw-actuator', {
          noLoadSpeed: 0.05,
          stallEffort: 60,
          control: 'switched',
          positionFeedback: false,
        }),
      ],
    });
    const { nominal, motor } = runOf(study);
    // Two lithium-polymer cells at half charge: 3.8054 V each, from the discharge table.
    const busV = 2 * 3.8054;
    const weightN = 9.80665;
    const liftA = motor.noLoadCurrentA + weightN / (motor.forwardEfficiency * motor.speedConstant);
    const liftS = (0.2 * motor.speedConstant) / (busV - liftA * motor.resistanceOhm);
    expect(nominal.stretchRatios[0]! * 10).toBeCloseTo(liftS, 9);
    const lowerA = motor.noLoadCurrentA - (motor.backwardEfficiency * weightN) / motor.speedConstant;
    const lowerS = (0.2 * motor.speedConstant) / (busV - lowerA * motor.resistanceOhm);
    expect(nominal.stretchRatios[1]! * 10).toBeCloseTo(lowerS, 9);
    const ratios = [10 / liftS, 10 / lowerS].map((ratio) => Math.min(ratio, 1 / ratio));
    expect(nominal.cueFidelityRatio).toBeCloseTo(20 / (10 / ratios[0]! + 10 / ratios[1]!), 9);
  });

  it('on a position drive is stretched until the weakest bus just suffices', () => {
    const fast = plainStudy();
    fast.show.loop[0]!.durationS = 0.2;
    const { nominal, motor } = runOf(fast);
    const stretch = nominal.stretchRatios[0]!;
    expect(stretch).toBeGreaterThan(1);
    // The 3-4-5 law by hand: s = 10t³ − 15t⁴ + 6t⁵; the largest motor voltage over the move is all that is left.
    const travel = 60 * degrees;
    const timeS = 0.2 * stretch;
    const torqueConstant = motor.forwardEfficiency * motor.speedConstant;
    const inertia = 1.33 * 0.3 * 0.15 ** 2;
    const rotor = (0.015 * motor.speedConstant ** 2) / motor.resistanceOhm;
    let largestV = 0;
    for (let i = 0; i <= 4000; i++) {
      const t = i / 4000;
      const angle = travel * (10 * t ** 3 - 15 * t ** 4 + 6 * t ** 5);
      const speed = (travel * 30 * t ** 2 * (1 - t) ** 2) / timeS;
      const acceleration = (travel * (60 * t - 180 * t ** 2 + 120 * t ** 3)) / timeS ** 2;
      const torque = 0.3 * 9.80665 * 0.15 * Math.cos(angle) + inertia * acceleration;
      const pushed =
        torque >= 0 ? torque / torqueConstant : (motor.backwardEfficiency * torque) / motor.speedConstant;
      const currentA = motor.noLoadCurrentA + pushed + (rotor * acceleration) / motor.speedConstant;
      largestV = Math.max(largestV, Math.abs(currentA * motor.resistanceOhm + motor.speedConstant * speed));
    }
    expect(largestV / (0.95 * 2 * 3.3)).toBeCloseTo(1, 4);
  });

  it('that no slowness makes possible is a failure that names the position', () => {
    const heavy = plainStudy({ feature: { ...plainStudy().feature, massKg: 4 } });
    const run = runOf(heavy);
    expect(run.nominal.runtimeS).toBeNull();
    expect(run.nominal.meanPackCurrentA).toBeNull();
    const failure = run.failures.find(({ code }) => code === 'moves')!;
    expect(failure.position! / degrees).toBeLessThan(15);
    expect(failure.reason).toMatch(/cannot move at .*deg|cannot move at .*°/);
    expect(run.failures.map(({ code }) => code)).toContain('holds');
  });
});

describe('a cord on a spool', () => {
  it('cannot push, so a counterweighted slide that would rise by itself fails', () => {
    const base = plainStudy();
    const study = plainStudy({
      feature: {
        ...base.feature,
        kind: 'slide',
        massKg: 0.5,
        upperStopPosition: 0.3,
        spring: { ...base.feature.spring, form: 'constant', constantEffort: 8 },
      },
      show: {
        leadIn: [],
        loop: [
          plainCue({ action: 'move', fromPosition: 0, toPosition: 0.2, durationS: 3 }),
          plainCue({ action: 'move', fromPosition: 0.2, toPosition: 0, durationS: 3 }),
        ],
      },
      candidates: [
        plainCandidate('position-servo', { coupling: 'spool', spoolRadiusM: 0.02, couplingEfficiency: 0.95 }),
      ],
    });
    const failure = runOf(study).failures.find(({ code }) => code === 'cord')!;
    expect(failure.value).toBeCloseTo(0.5 * 9.80665 - 8, 9);
  });
});

describe('two lithium-polymer cells', () => {
  it('give about 8 V in use and 8.4 V full, too low for 12 V lights (common practice)', () => {
    const { nominal, series } = runOf(plainStudy({ pack: plainPack('lipo') }));
    expect(nominal.busVoltageV).toBeCloseTo(8.4, 12);
    expect(nominal.busVoltageV).toBeLessThan(12);
    expect(Math.max(0, ...series.runDown.meanVoltagesV)).toBeLessThan(8.4);
  });
});

describe('a start-up', () => {
  it('meets stall resistance and leads of all drives at once at the full pack', () => {
    const study = plainStudy({ feature: { ...plainStudy().feature, featureCount: 2 } });
    const { nominal, motor } = runOf(study);
    const leadOhm = 2 * 0.5 * (1.7241e-8 / 0.823e-6) + 0.012;
    expect(nominal.startUpCurrentA).toBeCloseTo((2 * 8.4) / (motor.resistanceOhm + 2 * leadOhm), 9);
  });

  it('is nothing to tell of a gearmotor on a driver that ramps', () => {
    expect(
      runOf(plainStudy({ candidates: [plainCandidate('worm-gearmotor', wormSheet)] })).nominal
        .startUpCurrentA,
    ).toBeNull();
  });
});
