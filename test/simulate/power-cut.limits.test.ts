import { describe, expect, it } from 'vitest';
import type { DriveKind, DriveSheet } from '../../src/drives/sheet.js';
import { prepareCandidate, simulateCandidate } from '../../src/simulate/candidate.js';
import { decidingPowerCut, type NominalOutcome, type PowerCutOutcome } from '../../src/simulate/outcome.js';
import type { Feature } from '../../src/study/feature.js';
import type { Cue } from '../../src/study/show.js';
import type { Study } from '../../src/study/study.js';
import { plainCandidate, plainCue, plainStudy } from './plain-study.js';

const degrees = Math.PI / 180;

/** Weight of the plain arm about its hinge: 0.3 kg × 9.80665 m/s² × 0.15 m = 0.4412993 N·m. */
const weightNm = 0.3 * 9.80665 * 0.15;

/** Inertia of the arms below: a point of 0.3 kg at 0.15 m. */
const inertiaKgM2 = 0.3 * 0.15 ** 2;

/** A drive whose gears pass every effort back and whose motor has next to no friction and no rotor. */
const free: Partial<DriveSheet> = {
  backwardEfficiency: 1,
  noLoadCurrentA: 1e-9,
  mechanicalTimeConstantS: 0,
};

/** Holds at some poses, moved to and fro between them. */
function holdsAt(...angles: number[]): Cue[] {
  return angles.flatMap((angle, i) => {
    const at = angle * degrees;
    const next = angles[(i + 1) % angles.length]! * degrees;
    return [
      plainCue({ name: `hold ${i}`, fromPosition: at, durationS: 5 }),
      plainCue({ name: `move ${i}`, action: 'move', fromPosition: at, toPosition: next, durationS: 2 }),
    ];
  });
}

interface Given {
  kind?: DriveKind;
  sheet?: Partial<DriveSheet>;
  feature?: Partial<Feature>;
  loop?: Cue[];
  leadIn?: Cue[];
  carrier?: Partial<Study['carrier']>;
}

function studyOf({ kind = 'position-servo', sheet, feature, loop, leadIn = [], carrier }: Given): Study {
  const plain = plainStudy();
  return plainStudy({
    feature: { ...plain.feature, inertiaKgM2, ...feature },
    carrier: { ...plain.carrier, ...carrier },
    show: { leadIn, loop: loop ?? plain.show.loop },
    candidates: [plainCandidate(kind, sheet)],
  });
}

const nominalOf = (given: Given): NominalOutcome => {
  const study = studyOf(given);
  return simulateCandidate(study, study.candidates[0]!, 'sketch').nominal;
};
const cutOf = (given: Given): PowerCutOutcome => decidingPowerCut(nominalOf(given));

const spring = plainStudy().feature.spring;

describe('a feature that a spring throws up when the power is cut', () => {
  /** 3 N·m of spring against 0.44 N·m of weight, held at 20°, upper stop at 80°. */
  const thrown: Given = {
    sheet: free,
    feature: { spring: { ...spring, form: 'constant', constantEffort: 3 } },
    loop: holdsAt(20, 60),
  };

  it('lands on its upper stop with the work of the spring less that of the weight (energy balance)', () => {
    const cut = cutOf(thrown);
    const workJ = 3 * 60 * degrees - weightNm * (Math.sin(80 * degrees) - Math.sin(20 * degrees));
    expect([cut.stays, cut.towards, cut.fromPosition]).toEqual([false, 'upper', 20 * degrees]);
    expect(cut.impactEnergyJ! / workJ).toBeCloseTo(1, 6);
    expect(cut.tipSpeedMPerS! / (0.35 * Math.sqrt((2 * workJ) / inertiaKgM2))).toBeCloseTo(1, 6);
    expect(cut.fallS).toBeGreaterThan(0);
  });

  it('is thrown the same way that a weight as strong pulls it down (mirrored load, mirrored answer)', () => {
    // On a level rail there is no weight: a spring of 5 N up is a spring of 5 N down, seen from the other end.
    const rail = (constantEffort: number, at: number): Given => ({
      sheet: free,
      feature: {
        ...{ kind: 'slide', inclineRad: 0, lowerStopPosition: 0, upperStopPosition: 0.5 },
        spring: { ...spring, form: 'constant', constantEffort },
      },
      loop: [plainCue({ fromPosition: at })],
    });
    const [up, down] = [cutOf(rail(5, 0.1)), cutOf(rail(-5, 0.4))];
    expect([up.towards, down.towards]).toEqual(['upper', 'lower']);
    expect(up.impactEnergyJ).toBeCloseTo(5 * 0.4, 9);
    expect(up.impactEnergyJ).toBeCloseTo(down.impactEnergyJ!, 12);
    expect(up.fallS).toBeCloseTo(down.fallS!, 12);
  });

  it('stays where the friction of the drive is stronger than what is left of the spring', () => {
    // η_b 0.1 holds K·I_0/0.1: ten times the motor's own friction, both ways alike.
    const study = studyOf({ ...thrown, sheet: { backwardEfficiency: 0.1 } });
    const { drive } = prepareCandidate(study, study.candidates[0]!).model;
    const holdsNm = (drive.speedConstant * drive.noLoadCurrentA) / drive.backwardEfficiencyStatic;
    const withSpring = (constantEffort: number): PowerCutOutcome =>
      cutOf({
        sheet: { backwardEfficiency: 0.1 },
        feature: { spring: { ...spring, form: 'constant', constantEffort } },
        loop: holdsAt(0),
      });
    expect(withSpring(weightNm + 0.99 * holdsNm).stays).toBe(true);
    expect(withSpring(weightNm + 1.01 * holdsNm)).toMatchObject({ stays: false, towards: 'upper' });
  });
});

describe('a feature that is held past the vertical', () => {
  const over: Given = { sheet: free, feature: { upperStopPosition: 170 * degrees }, loop: holdsAt(150) };

  it('falls over backward onto its upper stop, by the height that it loses (energy balance)', () => {
    const cut = cutOf(over);
    const heightJ = weightNm * (Math.sin(150 * degrees) - Math.sin(170 * degrees));
    expect([cut.stays, cut.towards]).toEqual([false, 'upper']);
    expect(cut.impactEnergyJ! / heightJ).toBeCloseTo(1, 6);
  });

  it('stays where it lies on that stop already', () => {
    expect(cutOf({ ...over, loop: holdsAt(170) }).stays).toBe(true);
  });
});

describe('a power cut at any of the holds', () => {
  /** Friction that holds the arm near upright, where it weighs little, and not level. */
  const heldNm = 0.2;
  const sheet = { ...free, backdrivesAtEffort: heldNm };

  it('is told of the hold that the feature leaves, not of the highest one where it stays', () => {
    const at = (...angles: number[]) =>
      cutOf({
        sheet,
        feature: { lowerStopPosition: -60 * degrees, upperStopPosition: 89 * degrees },
        loop: holdsAt(...angles),
      });
    expect(at(88).stays).toBe(true);
    const cut = at(88, 0);
    expect([cut.stays, cut.fromPosition]).toEqual([false, 0]);
    // 60° down against a constant 0.2 N·m: weight times height less friction times way.
    const landsJ = weightNm * Math.sin(60 * degrees) - heldNm * 60 * degrees;
    expect(cut.impactEnergyJ! / landsJ).toBeCloseTo(1, 6);
  });

  it('is told of the highest where it falls from several: it passes the lower ones already moving', () => {
    const feature = { lowerStopPosition: -60 * degrees };
    const cut = cutOf({ sheet: free, feature, loop: holdsAt(10, 40, 20) });
    expect(cut.fromPosition).toBe(40 * degrees);
    expect(cut.impactEnergyJ! / (weightNm * (Math.sin(40 * degrees) + Math.sin(60 * degrees)))).toBeCloseTo(
      1,
      6,
    );
  });

  it('is told of the harder of a throw upward and a fall', () => {
    // k·(θ_0 − θ) with θ_0 at 10°: thrown up from below, pulled down from above.
    const both: Given = {
      sheet: free,
      feature: {
        ...{ lowerStopPosition: -60 * degrees, upperStopPosition: 89 * degrees, massKg: 1e-6, inertiaKgM2 },
        spring: { ...spring, form: 'linear', stiffness: -2, freePosition: 10 * degrees },
      },
    };
    // A spring past its dead centre: energy ½·k·(x² − x_0²) from x_0 to the stop at x, seen from 10°.
    const energyJ = (from: number, to: number) => ((to - 10) ** 2 - (from - 10) ** 2) * degrees ** 2;
    const cut = cutOf({ ...both, loop: holdsAt(15, 5) });
    expect([cut.towards, cut.fromPosition]).toEqual(['upper', 15 * degrees]);
    expect(energyJ(15, 89)).toBeGreaterThan(energyJ(5, -60));
    expect(cut.impactEnergyJ).toBeCloseTo(energyJ(15, 89), 4);
  });

  it('leaves a feature that lies on its lower stop where it is', () => {
    expect(cutOf({ sheet: free, loop: holdsAt(0) }).stays).toBe(true);
  });
});

describe('a drive that gives way where it was measured to', () => {
  const feature = { lowerStopPosition: -60 * degrees };

  it('falls against that effort, though its worm locks by calculation (energy balance)', () => {
    const sheet = { stallEffort: 2.5, stallCurrentA: 6, mechanicalTimeConstantS: 0, backdrivesAtEffort: 0.3 };
    const given: Given = { kind: 'worm-gearmotor', sheet, feature, loop: holdsAt(0) };
    const study = studyOf(given);
    expect(prepareCandidate(study, study.candidates[0]!).model.drive.backwardEfficiencyStatic).toBeLessThan(
      0,
    );
    const cut = cutOf(given);
    // Level to −60° the weight gives sin 60° × 0.4413 N·m; 0.3 N·m over 60° is 0.3142 J of it.
    const landsJ = weightNm * Math.sin(60 * degrees) - 0.3 * 60 * degrees;
    expect(cut.impactEnergyJ! / landsJ).toBeCloseTo(1, 6);
    expect(cut.fallS).toBeGreaterThan(0);
  });

  it('stays when shaken only if the bounce does not push it over, in both tellings alike', () => {
    // Walking takes 1.3 g: 1.3 × 0.4413 N·m = 0.5737 N·m.
    const at = (backdrivesAtEffort: number, worn: boolean) =>
      nominalOf({
        sheet: { ...free, backdrivesAtEffort },
        feature,
        loop: holdsAt(0),
        carrier: { worn, activity: 'walk' },
      });
    const weak = at(0.57, false);
    expect([weak.locking, weak.powerCut.stays, weak.powerCut.staysWhenShaken]).toEqual([
      'holds-at-rest',
      true,
      false,
    ]);
    const strong = at(0.58, false);
    expect([strong.locking, strong.powerCut.staysWhenShaken]).toEqual(['holds-when-shaken', true]);
    expect(at(0.57, true).powerCut.stays).toBe(false);
  });

  it('bounces with the weight alone: the spring that balances it does not bounce', () => {
    // The weight is balanced, but walking still takes and gives 0.3 × 0.4413 N·m = 0.1324 N·m.
    const balanced = { ...spring, form: 'constant' as const, constantEffort: weightNm };
    const at = (backdrivesAtEffort: number) =>
      nominalOf({
        sheet: { ...free, backdrivesAtEffort },
        feature: { ...feature, spring: balanced },
        loop: holdsAt(0),
        carrier: { worn: true, activity: 'walk' },
      });
    expect([at(0.13).locking, at(0.13).powerCut.stays]).toEqual(['holds-at-rest', false]);
    expect([at(0.14).locking, at(0.14).powerCut.stays]).toEqual(['holds-when-shaken', true]);
  });
});

describe('a worn drive that gives way only because it is shaken', () => {
  const worn = { worn: true, activity: 'walk' as const };

  it('lands with nothing where friction brakes it all the way, which is a figure', () => {
    const given: Given = {
      sheet: { ...free, backdrivesAtEffort: 0.5 },
      feature: { lowerStopPosition: -60 * degrees },
      loop: holdsAt(0),
      carrier: worn,
    };
    expect(cutOf(given)).toMatchObject({ stays: false, fallS: null, impactEnergyJ: 0, tipForceN: 0 });
  });

  it('creeps until its friction is too weak, and falls from there (energy balance)', () => {
    // At 50° it weighs cos 50° × 0.4413 = 0.2837 N·m: 0.3 N·m hold it still, not shaken. It slips below
    // arccos(0.3 / 0.4413) = 47.2°, which is looked for in 24 steps of the way.
    const cut = cutOf({
      sheet: { ...free, backdrivesAtEffort: 0.3 },
      feature: { lowerStopPosition: -60 * degrees },
      loop: holdsAt(50),
      carrier: worn,
    });
    const slipsAt = Math.acos(0.3 / weightNm);
    const landsJ = (from: number) =>
      weightNm * (Math.sin(from) + Math.sin(60 * degrees)) - 0.3 * (from + 60 * degrees);
    expect(cut.stays).toBe(false);
    expect(cut.impactEnergyJ! / landsJ(slipsAt)).toBeCloseTo(1, 1);
    expect(cut.impactEnergyJ).toBeLessThan(landsJ(slipsAt) + 1e-9);
  });
});

describe('a push against a drive', () => {
  it('is resisted with power on at least as well as with power off', () => {
    for (const backwardEfficiency of [0.01, 0.05, 0.3, 1]) {
      for (const stallEffort of [0.6, 2.5]) {
        const nominal = nominalOf({ sheet: { backwardEfficiency, stallEffort }, loop: holdsAt(0, 30) });
        const force = (newtons: number | null): number => newtons ?? Number.POSITIVE_INFINITY;
        expect(force(nominal.pushDownN)).toBeGreaterThanOrEqual(force(nominal.unpoweredPushDownN));
        expect(force(nominal.pushUpN)).toBeGreaterThanOrEqual(force(nominal.unpoweredPushUpN));
      }
    }
  });
});

describe('a rest', () => {
  const failuresOf = (given: Given) => {
    const study = studyOf(given);
    return simulateCandidate(study, study.candidates[0]!, 'sketch').failures;
  };
  const restAt = (angle: number): Cue[] => [
    plainCue({ action: 'rest', fromPosition: angle * degrees, durationS: 300 }),
    plainCue({ action: 'move', fromPosition: angle * degrees, toPosition: -40 * degrees, durationS: 2 }),
    plainCue({ action: 'move', fromPosition: -40 * degrees, toPosition: angle * degrees, durationS: 2 }),
  ];
  const hung: Given = {
    sheet: free,
    feature: { lowerStopPosition: -60 * degrees, upperStopPosition: 0 },
    loop: restAt(0),
  };

  it('on the upper stop is no rest where the weight pulls the feature off it', () => {
    const [failure] = failuresOf(hung);
    expect([failure?.code, failure?.position]).toEqual(['holds', 0]);
    expect(failure?.value).toBeCloseTo(weightNm, 9);
    expect(failure?.reason).toMatch(
      /nothing bears the feature where it rests at 0 deg: 0\.441 N·m pull it down/,
    );
  });

  it('there is one if a latch bears it, a spring presses it on, or the drive keeps it there by itself', () => {
    const latched = { ...hung.feature, latchPosition: 0 };
    const pressed = { ...hung.feature, spring: { ...spring, form: 'constant' as const, constantEffort: 1 } };
    expect(failuresOf({ ...hung, feature: latched })).toEqual([]);
    expect(failuresOf({ ...hung, feature: pressed })).toEqual([]);
    expect(failuresOf({ ...hung, sheet: { ...free, backdrivesAtEffort: 0.5 } })).toEqual([]);
  });

  it('on the lower stop is none where a spring lifts the feature off it', () => {
    const lifted = { ...hung.feature, spring: { ...spring, form: 'constant' as const, constantEffort: 1 } };
    const lower = plainCue({ action: 'rest', fromPosition: -60 * degrees, durationS: 30 });
    const loop = [lower, ...holdsAt(-60)];
    expect(failuresOf({ ...hung, loop })).toEqual([]);
    expect(failuresOf({ ...hung, feature: lifted, loop })[0]?.reason).toMatch(/pull it up/);
  });
});
