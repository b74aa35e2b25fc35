import { describe, expect, it } from 'vitest';
import { anchoredCoil, assistSpring } from '../../../src/assess/lesser-changes/assist-springs.js';
import type { Setup } from '../../../src/assess/lesser-changes/proposal.js';
import { SpringBench } from '../../../src/assess/lesser-changes/spring-bench.js';
import { speedRatio } from '../../../src/physics/linkage.js';
import { peakEffort, staticEffort } from '../../../src/physics/load.js';
import { prepareCandidate, simulateCandidate } from '../../../src/simulate/candidate.js';
import { noSpring } from '../../../src/study/feature.js';
import { plainCandidate, plainCue } from '../../simulate/plain-study.js';
import { seededNumbers } from '../../simulate/random-numbers.js';
import { proposed, reasonOf, runOf, type setupOf, withFeature } from './tools.js';

const degrees = Math.PI / 180;
/** Idle current of the plain servo on two lithium-polymer cells. */
const idleW = 0.01 * 7.4;

/** Raise from the lower stop, hold, sink a little, hold, and back: positions of both signs. */
const nodding = () => {
  const move = (from: number, to: number) =>
    plainCue({ action: 'move', fromPosition: from * degrees, toPosition: to * degrees, durationS: 2 });
  const hold = (at: number, durationS: number) => plainCue({ fromPosition: at * degrees, durationS });
  return [move(-30, 50), hold(50, 20), move(50, 10), hold(10, 15), move(10, -30), hold(-30, 5)];
};

const nods = (feature: Parameters<typeof withFeature>[0] = {}, parts: Parameters<typeof setupOf>[0] = {}) =>
  withFeature(
    { lowerStopPosition: -35 * degrees, upperStopPosition: 60 * degrees, ...feature },
    { show: { leadIn: [], loop: nodding() }, ...parts },
  );

describe('a spring that balances exactly', () => {
  it('brings the modelled hold power to the idle power of the drive', () => {
    const { study, candidate } = nods();
    const { massKg, balanceDistanceM } = study.feature;
    const armM = 0.08;
    const rateNPerM = (massKg * 9.80665 * balanceDistanceM) / armM ** 2;
    const spring = { ...noSpring, form: 'coil' as const, rateNPerM, frameArmM: armM, featureArmM: armM };
    const balanced = { ...study, feature: { ...study.feature, spring } };
    expect(simulateCandidate(study, candidate, 'sketch').nominal.holdPowerW).toBeGreaterThan(1.5 * idleW);
    expect(simulateCandidate(balanced, candidate, 'sketch').nominal.holdPowerW).toBeCloseTo(idleW, 12);
  });

  it('is what the anchored coil comes to when its carrier stands upright', () => {
    const setup = nods();
    const coil = proposed(anchoredCoil, setup);
    expect(runOf(coil).nominal.holdPowerW).toBeCloseTo(idleW, 12);
    const { rateNPerM, frameArmM, featureArmM } = coil.setup.study.feature.spring;
    // A drive that has nothing to bear passes every torque limit.
    expect(runOf(coil).nominal.torqueMarginRatio).toBe(1000);
    // k·a·b = m·g·r
    expect(rateNPerM * frameArmM * featureArmM).toBeCloseTo(0.3 * 9.80665 * 0.15, 12);
  });

  it('along an upright rail is one that pushes with the weight', () => {
    const { study, candidate } = withFeature({ kind: 'slide', massKg: 0.5 }, slideParts());
    const spring = { ...noSpring, form: 'constant' as const, constantEffort: 0.5 * 9.80665 };
    const balanced = { ...study, feature: { ...study.feature, spring } };
    expect(simulateCandidate(balanced, candidate, 'sketch').nominal.holdPowerW).toBeCloseTo(idleW, 12);
  });
});

/** A servo that winds a cord and lifts a carriage by 200 mm. */
function slideParts(): Parameters<typeof setupOf>[0] {
  const loop = [
    plainCue({ action: 'move', fromPosition: 0, toPosition: 0.2, durationS: 2 }),
    plainCue({ fromPosition: 0.2, durationS: 20 }),
    plainCue({ action: 'move', fromPosition: 0.2, toPosition: 0, durationS: 2 }),
    plainCue({ action: 'rest', fromPosition: 0, durationS: 5 }),
  ];
  const candidates = [plainCandidate('position-servo', { coupling: 'spool', spoolRadiusM: 0.05 })];
  return { candidates, show: { leadIn: [], loop } };
}

const strut = {
  coupling: 'strut' as const,
  strutFrameArmM: 0.12,
  strutFeatureArmM: 0.08,
  strutLevelAngleRad: 85 * degrees,
  strokeM: 0.15,
  noLoadSpeed: 0.03,
  stallEffort: 200,
  stallCurrentA: 2,
};

const cases: [name: string, setup: Setup][] = [
  ['level hinge', nods()],
  [
    'leaning carrier who walks',
    nods({}, { carrier: { worn: true, activity: 'walk', leanRad: 0.15, bodyMassKg: 70 } }),
  ],
  [
    'carrier who dances',
    nods({}, { carrier: { worn: true, activity: 'dance', leanRad: -0.1, bodyMassKg: 70 } }),
  ],
  [
    'stiff joint in a gust',
    nods(
      { frictionEffort: 0.08, panelAreaM2: 0.05 },
      { air: { gustMPerS: 6, temperatureK: 290, buried: false } },
    ),
  ],
  ['screw under the feature', nods({}, { candidates: [plainCandidate('screw-actuator', strut)] })],
  [
    'worm that holds unpowered',
    nods({}, { candidates: [plainCandidate('worm-gearmotor', { poweredAtHold: false, noLoadSpeed: 2 })] }),
  ],
  [
    'switched worm',
    nods(
      {},
      {
        candidates: [
          plainCandidate('worm-gearmotor', { control: 'switched', poweredAtHold: false, noLoadSpeed: 2 }),
        ],
      },
    ),
  ],
  [
    'cord on a rail',
    withFeature({ kind: 'slide', massKg: 0.5, lowerStopPosition: 0, upperStopPosition: 0.2 }, slideParts()),
  ],
];

/** Largest magnitudes over the cue range, on a grid that the search does not use. */
function peaks({ study, candidate }: Setup) {
  const { load, coupling, range } = prepareCandidate(study, candidate).model;
  const largest = { still: 0, worst: 0, drive: 0, lowest: Number.POSITIVE_INFINITY };
  for (let i = 0; i <= 997; i++) {
    const position = range.lowest + ((range.highest - range.lowest) * i) / 997;
    const still = staticEffort(load, position);
    const worst = Math.abs(peakEffort(load, position));
    largest.still = Math.max(largest.still, Math.abs(still));
    largest.worst = Math.max(largest.worst, worst);
    largest.drive = Math.max(largest.drive, worst / Math.abs(speedRatio(coupling, position)));
    largest.lowest = Math.min(largest.lowest, still);
  }
  return { ...largest, onStop: staticEffort(load, study.feature.lowerStopPosition) };
}

describe.each(cases)('on a %s', (_, setup) => {
  it.each([
    ['a long or torsion spring', assistSpring],
    ['an anchored coil', anchoredCoil],
  ])('%s raises no peak and leaves the feature on its lower stop', (_kind, kind) => {
    const attempt = kind.propose(setup);
    if ('reason' in attempt) {
      expect(attempt.reason).toBe('only a hinge has a place for it');
      return;
    }
    const [before, after] = [peaks(setup), peaks(attempt.proposal.setup)];
    const grid = 1.0005;
    expect(after.still).toBeLessThanOrEqual(before.still * grid);
    expect(after.worst).toBeLessThanOrEqual(before.worst * grid);
    expect(after.drive).toBeLessThanOrEqual(before.drive * grid);
    expect(after.onStop).toBeGreaterThanOrEqual(-1e-9);
    if (setup.candidate.sheet.coupling === 'spool') expect(after.lowest).toBeGreaterThanOrEqual(-1e-9);
  });

  it('the simulation bears out that the drives draw less', () => {
    const before = simulateCandidate(setup.study, setup.candidate, 'sketch').nominal;
    const after = runOf(proposed(assistSpring, setup)).nominal;
    expect(after.meanPackCurrentA!).toBeLessThan(before.meanPackCurrentA!);
    expect(after.torqueMarginRatio!).toBeGreaterThan(before.torqueMarginRatio! * 0.9995);
  });

  it('no spring drawn at random does better', () => {
    const bench = new SpringBench(setup);
    const { spring } = proposed(assistSpring, setup).setup.study.feature;
    const found = bench.drawW(spring);
    const random = seededNumbers(7);
    const { lowest, highest } = bench.model.range;
    const reach = setup.study.feature.kind === 'hinge' ? Math.PI : 3 * (highest - lowest);
    for (let i = 0; i < 300; i++) {
      const distance = highest - lowest + random() * reach;
      const stiffness = (random() * 6 * Math.max(...[0.2, peaks(setup).still])) / distance;
      const other = { ...noSpring, form: 'linear' as const, stiffness, freePosition: lowest + distance };
      if (bench.allows(other)) expect(bench.drawW(other)).toBeGreaterThan(found * 0.985);
    }
  });
});

describe('no spring', () => {
  it('is proposed where gravity pushes the feature up everywhere', () => {
    const loop = [plainCue({ fromPosition: 2, durationS: 10 })];
    const setup = withFeature(
      { lowerStopPosition: 1.9, upperStopPosition: 2.5 },
      { show: { leadIn: [], loop } },
    );
    for (const kind of [assistSpring, anchoredCoil])
      expect(reasonOf(kind.propose(setup))).toBe(
        'gravity does not pull the feature down anywhere in its range',
      );
  });

  it('is proposed again where one balances already', () => {
    const setup = nods();
    const balanced = proposed(anchoredCoil, setup).setup;
    for (const kind of [assistSpring, anchoredCoil]) expect(reasonOf(kind.propose(balanced))).not.toBeNull();
  });
});
