import { describe, expect, it } from 'vitest';
import { prepareCandidate, simulateCandidate } from '../../../src/simulate/candidate.js';
import { CandidateKernel } from '../../../src/simulate/ensemble/candidate-kernel.js';
import { outcomeIndex, outcomeNames } from '../../../src/simulate/ensemble/ensemble.js';
import { packDrawOf } from '../../../src/simulate/ensemble/pack-draw.js';
import { EnsembleRun } from '../../../src/simulate/ensemble/run-ensemble.js';
import { isSure } from '../../../src/simulate/failures.js';
import { meanCurrentA } from '../../../src/simulate/loop-figures.js';
import {
  decidingPowerCut,
  type NominalOutcome,
  type PowerCutOutcome,
} from '../../../src/simulate/outcome.js';
import { CuePlayer, coarse } from '../../../src/simulate/play-loop.js';
import type { Study } from '../../../src/study/study.js';
import { plainCandidate, plainStudy } from '../plain-study.js';
import { fullerStudy, randomStudy } from '../random-study.js';

/** All outcomes of a study's first candidate by the kernel that the draws use, from nominal figures. */
function byKernel(study: Study): (name: keyof typeof outcomeIndex) => number {
  const candidate = study.candidates[0]!;
  const columns = outcomeNames.map(() => new Float64Array(1));
  new CandidateKernel(study, candidate).run(study, candidate, packDrawOf(study), columns, 0);
  return (name) => columns[outcomeIndex[name]]![0]!;
}

/** A random study with a pack for about an hour; null when its moves cannot be made. */
function playableStudy({ study }: { study: Study }): Study | null {
  const { model } = prepareCandidate(study, study.candidates[0]!);
  const played = [study.show.leadIn, study.show.loop].map((cues) =>
    new CuePlayer(model, cues, study.loads, coarse).play(),
  );
  if (played.some(({ stuckAt }) => stuckAt !== null)) return null;
  const nominalV = study.pack.seriesCount * study.pack.chemistry.nominalVoltageV;
  study.pack.capacityC = meanCurrentA(played[1]!.samples, nominalV) * 4500;
  // A pack that its own peaks do not pull under: they cost a tenth of a volt a cell.
  study.pack.cellResistanceOhm = 0.1 / Math.max(...played.map(({ peakCurrentA }) => peakCurrentA));
  return study;
}

const studiesOf = (random: (seed: number) => { study: Study }, count: number): Study[] =>
  Array.from({ length: count }, (_, seed) => playableStudy(random(seed + 1))).filter(
    (study) => study !== null,
  );

/** The easier way to push the feature; null when it does not yield. */
const lesserPush = ({ pushDownN, pushUpN }: NominalOutcome): number | null =>
  pushDownN === null || pushUpN === null ? null : Math.min(pushDownN, pushUpN);

type Off = Partial<Record<keyof typeof outcomeIndex, number>>;

/** Take into `worst` how far the kernel is off the full simulation of one study, as shares; returns its power cut. */
function compareBoth(study: Study, worst: Off): PowerCutOutcome {
  const { nominal, failures } = simulateCandidate(study, study.candidates[0]!);
  const kernel = byKernel(study);
  const compare = (name: keyof typeof outcomeIndex, full: number | null, zero = 0): void => {
    if (full === null) return;
    const off = Math.abs(kernel(name) - full) / Math.max(Math.abs(full - zero), 1e-3);
    worst[name] = Math.max(worst[name] ?? 0, off);
  };
  // A run that ends on a peak may end one loop earlier or later.
  const apartS = Math.abs(kernel('runtimeS') - (nominal.runtimeS ?? Number.NaN));
  if (!(apartS < nominal.loopS!)) compare('runtimeS', nominal.runtimeS);
  // The draws take the hardest peak at the loop's largest relaxation: a warning comes a loop early at the most.
  // Before five of its time constants of a minute the relaxation is not as large as that yet.
  if (nominal.warningS !== null && (study.show.leadIn.length === 0 || nominal.warningS > 300)) {
    const allowedS = Math.max(1.5 * nominal.loopS!, 0.02 * nominal.runtimeS!);
    expect(Math.abs(kernel('warningS') - nominal.warningS)).toBeLessThan(allowedS);
  }
  compare('loopS', nominal.loopS);
  compare('cueFidelityRatio', nominal.cueFidelityRatio);
  compare('meanPackCurrentA', nominal.meanPackCurrentA);
  compare('peakPackCurrentA', nominal.peakPackCurrentA);
  compare('holdPowerW', nominal.holdPowerW);
  compare('holdEffortRatio', nominal.holdEffortRatio);
  compare('torqueMarginRatio', nominal.torqueMarginRatio);
  const airK = study.air.temperatureK;
  if ((nominal.windingTemperatureK ?? 1000) < 450) {
    compare('windingTemperatureK', nominal.windingTemperatureK, airK - 20);
  }
  // Straight between two temperatures, and so only as good as that far beyond them.
  if ((nominal.settledHoldWindingK ?? 1000) < 450) {
    compare('settledHoldWindingK', nominal.settledHoldWindingK, airK - 20);
  }
  const cut = decidingPowerCut(nominal);
  expect(Number.isNaN(kernel('fallS'))).toBe(cut.fallS === null);
  expect(Number.isNaN(kernel('tipSpeedMPerS'))).toBe(cut.tipSpeedMPerS === null);
  compare('fallS', cut.fallS);
  compare('tipSpeedMPerS', cut.tipSpeedMPerS);
  compare('fallEnergyJ', cut.impactEnergyJ ?? 0);
  compare('crushForceN', nominal.crushForceN);
  compare('pushForceN', lesserPush(nominal));
  compare('startUpCurrentA', nominal.startUpCurrentA);
  compare('holdPackCurrentA', nominal.holdPackCurrentA);
  expect(kernel('feasible')).toBe(failures.some(isSure) ? 0 : 1);
  expect(kernel('locking')).toBe(
    { 'does-not-hold': 0, 'holds-at-rest': 1, 'holds-when-shaken': 2 }[nominal.locking],
  );
  return cut;
}

/*
 * Eight intervals of a move against sixty, cues against samples: a few parts in a hundred at the most. The winding's
 * ripple inside a move is not followed, which shows in shows of very long moves.
 */
const bounds: Off = {
  runtimeS: 0.015,
  loopS: 0.01,
  cueFidelityRatio: 0.02,
  meanPackCurrentA: 0.02,
  peakPackCurrentA: 0.05,
  holdPowerW: 0.005,
  holdPackCurrentA: 0.005,
  holdEffortRatio: 1e-9,
  torqueMarginRatio: 0.01,
  windingTemperatureK: 0.08,
  settledHoldWindingK: 0.08,
  fallS: 0.01,
  tipSpeedMPerS: 0.01,
  fallEnergyJ: 0.02,
  crushForceN: 0.01,
  pushForceN: 1e-9,
  startUpCurrentA: 1e-9,
};

/**
 * The same for studies with a carrier, springs and measured yields. Where friction nearly holds a feature it starts so
 * slowly that few steps miss the time of its fall, though not its speed; and where a peak ends the run on the flat part
 * of a cell's curve, a percent of that peak is minutes.
 */
const fullerBounds: Off = { ...bounds, fallS: 0.1, runtimeS: 0.06 };

function expectAgreement(studies: readonly Study[], within: Off): PowerCutOutcome[] {
  const worst: Off = {};
  const cuts = studies.map((study) => compareBoth(study, worst));
  for (const [name, bound] of Object.entries(within)) {
    expect(worst[name as keyof Off] ?? 0, name).toBeLessThan(bound);
  }
  return cuts;
}

describe('the kernel of the draws, at nominal figures', () => {
  const studies = studiesOf(randomStudy, 90);

  it('plays the same shows as the full simulation: times, currents, runtime, heat and falls', () => {
    expect(studies.length).toBeGreaterThan(45);
    expectAgreement(studies, bounds);
  });

  it('and those with lead-in, spring, walking carrier, several drives and a measured yield', () => {
    const fuller = studiesOf(fullerStudy, 160);
    expect(fuller.length).toBeGreaterThan(80);
    const cuts = expectAgreement(fuller, fullerBounds);
    // All that can happen to a feature that is let go happens among them.
    const count = (has: (cut: PowerCutOutcome) => boolean): number => cuts.filter(has).length;
    expect(count(({ stays }) => stays)).toBeGreaterThan(10);
    expect(count(({ fallS, towards }) => fallS !== null && towards === 'upper')).toBeGreaterThan(5);
    expect(count(({ fallS, towards }) => fallS !== null && towards === 'lower')).toBeGreaterThan(10);
    expect(count(({ stays, fallS }) => !stays && fallS === null)).toBeGreaterThan(2);
  });

  it('finds the same ways to fail', () => {
    const heavy = plainStudy({ feature: { ...plainStudy().feature, massKg: 4 } });
    expect(byKernel(heavy)('feasible')).toBe(0);
    expect(byKernel(heavy)('runtimeS')).toBeNaN();
    expect(byKernel(plainStudy())('feasible')).toBe(1);
    const threePositions = plainStudy({
      candidates: [
        plainCandidate('worm-gearmotor', { control: 'switched', positionFeedback: false, stallEffort: 6 }),
      ],
    });
    expect(byKernel(threePositions)('feasible')).toBe(1);
    threePositions.show.loop[1] = { ...threePositions.show.loop[1]!, fromPosition: 0.5, toPosition: 0.5 };
    expect(byKernel(threePositions)('feasible')).toBe(0);
  });

  it('ends a run in the lead-in where the full simulation ends it, whatever was computed before', () => {
    const inLeadIn = studies.slice(0, 16).map((study) => {
      const { loop } = study.show;
      const onceS = loop.reduce((sum, { durationS }) => sum + durationS, 0);
      const times = Math.ceil(6000 / onceS);
      return { ...study, show: { leadIn: Array<typeof loop>(times).fill(loop).flat(), loop } };
    });
    for (const study of inLeadIn) {
      const { nominal } = simulateCandidate(study, study.candidates[0]!);
      const apartS = Math.abs(byKernel(study)('runtimeS') - nominal.runtimeS!);
      expect(apartS).toBeLessThan(Math.max(1.5 * nominal.loopS!, 0.015 * nominal.runtimeS!));
    }
    const run = new EnsembleRun(inLeadIn[0]!, inLeadIn[0]!.candidates, 32);
    const [forwards, backwards] = [run.emptyOutcomes(), run.emptyOutcomes()];
    run.run(0, 32, forwards);
    for (let draw = 31; draw >= 0; draw--) run.run(draw, draw + 1, backwards);
    expect(backwards).toEqual(forwards);
  });
});
