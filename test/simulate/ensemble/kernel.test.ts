import { describe, expect, it } from 'vitest';
import { prepareCandidate, simulateCandidate } from '../../../src/simulate/candidate.js';
import { CandidateKernel } from '../../../src/simulate/ensemble/candidate-kernel.js';
import { outcomeIndex, outcomeNames } from '../../../src/simulate/ensemble/ensemble.js';
import { packDrawOf } from '../../../src/simulate/ensemble/pack-draw.js';
import { EnsembleRun } from '../../../src/simulate/ensemble/run-ensemble.js';
import { meanCurrentA } from '../../../src/simulate/loop-figures.js';
import { decidingPowerCut, type NominalOutcome } from '../../../src/simulate/outcome.js';
import { CuePlayer, coarse } from '../../../src/simulate/play-loop.js';
import type { Study } from '../../../src/study/study.js';
import { plainCandidate, plainStudy } from '../plain-study.js';
import { randomStudy } from '../random-study.js';

/** All outcomes of a study's first candidate by the kernel that the draws use, from nominal figures. */
function byKernel(study: Study): (name: keyof typeof outcomeIndex) => number {
  const candidate = study.candidates[0]!;
  const columns = outcomeNames.map(() => new Float64Array(1));
  new CandidateKernel(study, candidate).run(study, candidate, packDrawOf(study), columns, 0);
  return (name) => columns[outcomeIndex[name]]![0]!;
}

/** A random study with a pack for about an hour; null when its moves cannot be made. */
function playableStudy(seed: number): Study | null {
  const { study } = randomStudy(seed);
  const { model } = prepareCandidate(study, study.candidates[0]!);
  const played = new CuePlayer(model, study.show.loop, study.loads, coarse).play();
  if (played.stuckAt !== null) return null;
  const nominalV = study.pack.seriesCount * study.pack.chemistry.nominalVoltageV;
  study.pack.capacityC = meanCurrentA(played.samples, nominalV) * 4500;
  // A pack that its own peaks do not pull under: they cost a tenth of a volt a cell.
  study.pack.cellResistanceOhm = 0.1 / played.peakCurrentA;
  return study;
}

/** The easier way to push the feature; null when it does not yield. */
const lesserPush = ({ pushDownN, pushUpN }: NominalOutcome): number | null =>
  pushDownN === null || pushUpN === null ? null : Math.min(pushDownN, pushUpN);

describe('the kernel of the draws, at nominal figures', () => {
  const studies = Array.from({ length: 90 }, (_, seed) => playableStudy(seed + 1)).filter(
    (study) => study !== null,
  );

  it('plays the same shows as the full simulation: times, currents, runtime, heat and falls', () => {
    expect(studies.length).toBeGreaterThan(45);
    const worst: Record<string, number> = {};
    for (const study of studies) {
      const { nominal } = simulateCandidate(study, study.candidates[0]!);
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
      if (nominal.warningS !== null) {
        const allowedS = Math.max(1.5 * nominal.loopS!, 0.02 * nominal.runtimeS!);
        expect(Math.abs(kernel('warningS') - nominal.warningS)).toBeLessThan(allowedS);
      }
      compare('loopS', nominal.loopS);
      compare('cueFidelityRatio', nominal.cueFidelityRatio);
      compare('meanPackCurrentA', nominal.meanPackCurrentA);
      compare('peakPackCurrentA', nominal.peakPackCurrentA);
      compare('holdPowerW', nominal.holdPowerW);
      compare('torqueMarginRatio', nominal.torqueMarginRatio);
      if ((nominal.windingTemperatureK ?? 1000) < 450) {
        compare('windingTemperatureK', nominal.windingTemperatureK, study.air.temperatureK - 20);
      }
      const cut = decidingPowerCut(nominal);
      compare('fallS', cut.fallS);
      compare('tipSpeedMPerS', cut.tipSpeedMPerS);
      compare('fallEnergyJ', cut.impactEnergyJ);
      compare('crushForceN', nominal.crushForceN);
      compare('pushForceN', lesserPush(nominal));
      compare('startUpCurrentA', nominal.startUpCurrentA);
      compare('holdPackCurrentA', nominal.holdPackCurrentA);
      expect(kernel('locking')).toBe(
        { 'does-not-hold': 0, 'holds-at-rest': 1, 'holds-when-shaken': 2 }[nominal.locking],
      );
    }
    // Eight intervals of a move against sixty, cues against samples: a few parts in a hundred at the most. The
    // winding's ripple inside a move is not followed, which shows in shows of very long moves.
    const bounds: Record<string, number> = {
      runtimeS: 0.015,
      loopS: 0.01,
      cueFidelityRatio: 0.02,
      meanPackCurrentA: 0.02,
      peakPackCurrentA: 0.05,
      holdPowerW: 0.005,
      holdPackCurrentA: 0.005,
      torqueMarginRatio: 0.01,
      windingTemperatureK: 0.08,
      fallS: 0.01,
      tipSpeedMPerS: 0.01,
      fallEnergyJ: 0.02,
      crushForceN: 0.01,
      pushForceN: 1e-9,
      startUpCurrentA: 1e-9,
    };
    for (const [name, bound] of Object.entries(bounds)) expect(worst[name] ?? 0, name).toBeLessThan(bound);
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
