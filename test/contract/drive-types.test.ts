import { describe, expect, it } from 'vitest';
import { driveTypes } from '../../src/drives/registry.js';
import type { DriveKind, DriveSheet } from '../../src/drives/sheet.js';
import { copperReferenceK } from '../../src/physics/constants.js';
import { gearHeatW } from '../../src/physics/thermal.js';
import { prepareCandidate } from '../../src/simulate/candidate.js';
import type { CandidateModel } from '../../src/simulate/candidate-model.js';
import { copperHeatW } from '../../src/simulate/heat-load.js';
import { holdDraw, holdMotorCurrentA } from '../../src/simulate/hold.js';
import { busDraw, movingCurrentA, movingVoltageV } from '../../src/simulate/motor-point.js';
import { MoveTrack } from '../../src/simulate/move-track.js';
import { powerCut, staysUnpowered } from '../../src/simulate/power-cut.js';
import { plainCandidate, plainCue, plainStudy } from '../simulate/plain-study.js';

/** A sheet of each kind that could raise the plain study's arm or lift it on a rail. */
const sheets: Record<DriveKind, Partial<DriveSheet>> = {
  'position-servo': {},
  'worm-gearmotor': { noLoadSpeed: 3, stallEffort: 2.5, stallCurrentA: 2.8, noLoadCurrentA: 0.25 },
  'screw-actuator': {
    noLoadSpeed: 0.04,
    stallEffort: 150,
    stallCurrentA: 2.6,
    noLoadCurrentA: 0.25,
    coupling: 'strut',
    strutFrameArmM: 0.09,
    strutFeatureArmM: 0.05,
    strutLevelAngleRad: 1.2,
    strokeM: 0.2,
  },
};

const kinds = Object.keys(driveTypes) as DriveKind[];
const variants = kinds.flatMap((kind) =>
  (['position', 'switched'] as const)
    .filter((control) => kind !== 'position-servo' || control === 'position')
    .map((control) => ({ kind, control })),
);

function modelOf(kind: DriveKind, more: Partial<DriveSheet> = {}): CandidateModel {
  const study = plainStudy({ candidates: [plainCandidate(kind, { ...sheets[kind], ...more })] });
  return prepareCandidate(study, study.candidates[0]!).model;
}

const efforts = (model: CandidateModel): number[] =>
  [0.01, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8].map((share) => share * model.drive.stallEffort);

describe.each(variants)('a $kind on $control control', ({ kind, control }) => {
  const model = modelOf(kind, { control });
  const { drive } = model;

  it('holds no load with no current', () => {
    expect(holdMotorCurrentA(drive, 0, 0.15)).toBe(0);
    const draw = { powerW: 1, currentA: 1 };
    holdDraw(model, 0, draw);
    expect(draw.powerW + draw.currentA).toBe(0);
  });

  it('never takes less current for more load, holding or lifting', () => {
    let lastHoldA = 0;
    let lastMoveA = 0;
    for (const effort of efforts(model)) {
      const holdA = holdMotorCurrentA(drive, effort, 0.15);
      const moveA = movingCurrentA(model, effort, 0);
      expect(holdA).toBeGreaterThanOrEqual(lastHoldA);
      expect(moveA).toBeGreaterThan(lastMoveA);
      lastHoldA = holdA;
      lastMoveA = moveA;
    }
  });

  it('turns all electrical power into motion and heat while it drives', () => {
    const speed = 0.3 * drive.noLoadSpeed;
    for (const effort of efforts(model).slice(0, 5)) {
      const currentA = movingCurrentA(model, effort, 0);
      const voltageV = movingVoltageV(model, currentA, speed);
      const draw = { powerW: 0, currentA: 0 };
      busDraw(model, currentA, voltageV, draw);
      // A switched drive runs at the speed at which its own voltage is the bus: no pulses, no chopping loss.
      const busV = control === 'switched' ? voltageV : model.bus.nominalV;
      const electricalW = draw.powerW + draw.currentA * busV;
      const copperW = copperHeatW(model, currentA, speed, copperReferenceK);
      const gearW = gearHeatW(drive.speedConstant, speed, currentA, effort);
      expect(electricalW).toBeCloseTo(effort * speed + copperW + gearW, 9);
      expect(copperW).toBeGreaterThan(0);
      expect(gearW).toBeGreaterThan(0);
    }
  });

  it('turns electrical and mechanical power into heat while it brakes against its own motion', () => {
    // Plugging: an overhauling load so large that the motor pushes back although it turns slowly.
    const currentA = -0.5 * drive.stallCurrentA;
    const speed = 0.05 * drive.noLoadSpeed;
    const voltageV = movingVoltageV(model, currentA, speed);
    expect(voltageV).toBeLessThan(0);
    const draw = { powerW: 0, currentA: 0 };
    busDraw(model, currentA, voltageV, draw);
    if (control === 'switched') {
      expect(draw.powerW + draw.currentA).toBe(0);
      return;
    }
    const electricalW = draw.powerW + draw.currentA * model.bus.nominalV;
    const shaftW = -drive.speedConstant * speed * currentA;
    expect(copperHeatW(model, currentA, speed, copperReferenceK)).toBeCloseTo(electricalW + shaftW, 9);
  });

  it('takes nothing from the pack while the load drives it as a generator', () => {
    const draw = { powerW: 1, currentA: 1 };
    busDraw(model, -0.05, 1, draw);
    expect(draw).toEqual({ powerW: 0, currentA: 0 });
  });

  it('turns the power of a load that drives it into heat, unless it gives it back', () => {
    const currentA = -0.1 * drive.stallCurrentA;
    const speed = 0.8 * drive.noLoadSpeed;
    const voltageV = movingVoltageV(model, currentA, speed);
    expect(voltageV).toBeGreaterThan(0);
    const shaftW = -drive.speedConstant * speed * currentA;
    const copperW = currentA ** 2 * drive.resistanceOhm;
    if (control === 'position') {
      expect(copperHeatW(model, currentA, speed, copperReferenceK)).toBeCloseTo(shaftW, 9);
      const returning = { ...model, regenerates: true };
      const draw = { powerW: 0, currentA: 0 };
      busDraw(returning, currentA, voltageV, draw);
      expect(copperHeatW(returning, currentA, speed, copperReferenceK)).toBeCloseTo(copperW, 9);
      expect(draw.powerW + draw.currentA * model.bus.nominalV).toBeCloseTo(copperW - shaftW, 9);
    } else {
      expect(copperHeatW(model, currentA, speed, copperReferenceK)).toBeCloseTo(copperW, 9);
    }
  });

  it('answers a mirrored load and motion with the same current', () => {
    // The same arm upside down on the same drive: the load of +x is that of −x with its sign turned.
    const up = plainCue({ action: 'move', fromPosition: -0.5, toPosition: 0.4, durationS: 3 });
    const down = plainCue({ action: 'move', fromPosition: 0.5, toPosition: -0.4, durationS: 3 });
    const plain = { ...model, coupling: { ...model.coupling, kind: 'direct' as const, fixedRatio: 1 } };
    const mirrored = { ...plain, load: { ...plain.load, gravityEffort: -plain.load.gravityEffort } };
    const first = new MoveTrack(plain, up, 6);
    const second = new MoveTrack(mirrored, down, 6);
    for (let i = 0; i < first.count; i++) {
      const there = { ...first.evaluate(i, 1.3) };
      const here = second.evaluate(i, 1.3);
      expect(here.currentA).toBeCloseTo(there.currentA, 12);
      expect(here.voltageV).toBeCloseTo(there.voltageV, 12);
    }
  });

  it('stays up without power exactly when friction beats its backward efficiency', () => {
    const highest = plainStudy().show.loop[1]!.fromPosition;
    const locks = drive.backwardEfficiencyStatic <= 0;
    const prepared = prepareCandidate(
      plainStudy({ candidates: [plainCandidate(kind, { ...sheets[kind], control })] }),
      plainCandidate(kind, { ...sheets[kind], control }),
    );
    if (locks) {
      expect(staysUnpowered(model, highest, false)).toBe(true);
      expect(prepared.locking).not.toBe('does-not-hold');
    } else {
      expect(prepared.locking).toBe('does-not-hold');
    }
    const free = modelOf(kind, { control, backwardEfficiency: 0.9, noLoadCurrentA: 0.001 });
    expect(staysUnpowered(free, highest, false)).toBe(false);
    expect(powerCut(free, [highest], false, false).fallS).toBeGreaterThan(0);
  });
});

describe('every drive type', () => {
  it.each(kinds)('%s names its sources, its cautions and its own kind', (kind) => {
    const type = driveTypes[kind];
    expect(type.kind).toBe(kind);
    expect(type.sources.length).toBeGreaterThan(0);
    expect(type.cautions.length).toBeGreaterThan(0);
    expect(new Set(type.columns.map(({ name }) => name)).size).toBe(type.columns.length);
  });

  it('calls no spur train locking without a measurement, and believes a measurement', () => {
    const tight = plainCandidate('position-servo', { backwardEfficiency: -0.5 });
    expect(prepareCandidate(plainStudy(), tight).locking).toBe('does-not-hold');
    const measured = plainCandidate('position-servo', { backdrivesAtEffort: 5 });
    expect(prepareCandidate(plainStudy(), measured).locking).toBe('holds-when-shaken');
  });
});
