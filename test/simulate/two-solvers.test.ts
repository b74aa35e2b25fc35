import { describe, expect, it } from 'vitest';
import { busVoltageV, openCircuitVoltageV } from '../../src/physics/cell.js';
import { openCircuitVoltagesV } from '../../src/physics/cell-tables.js';
import { prepareCandidate } from '../../src/simulate/candidate.js';
import { meanCurrentA } from '../../src/simulate/loop-figures.js';
import type { LoopSamples } from '../../src/simulate/loop-samples.js';
import { cellResistanceOhm, packModel } from '../../src/simulate/pack-model.js';
import { CuePlayer, coarse } from '../../src/simulate/play-loop.js';
import { type RunDown, steppedRunDown } from '../../src/simulate/run-down.js';
import { averagedRunDown } from '../../src/simulate/run-down-averaged.js';
import type { Study } from '../../src/study/study.js';
import { Draws } from './random-numbers.js';
import { type PackTask, randomStudy } from './random-study.js';
import { samplesOf } from './segments.js';

const wanted = 200;
const shortestS = 600;
const longestS = 240 * 60;

interface Outcome {
  loopS: number;
  stepped: RunDown;
  averaged: RunDown;
  task: PackTask;
}

/** Play one random study and run it down with both solvers; null when it cannot be played or runs too short or long. */
function outcomeOf(seed: number): Outcome | null {
  const { study, task } = randomStudy(seed);
  const candidate = study.candidates[0]!;
  const { model } = prepareCandidate(study, candidate);
  const played = new CuePlayer(model, study.show.loop, study.loads, coarse).play();
  if (played.stuckAt !== null) return null;
  fitPack(study, played.samples, played.peakCurrentA, task, seed);
  const pack = packModel(study.pack, study.wiring, study.packTemperatureK, null);
  const none = samplesOf([]);
  const stepped = steppedRunDown(pack, none, played.samples);
  if (stepped.runtimeS < shortestS || stepped.runtimeS > longestS) return null;
  return {
    loopS: played.samples.totalS,
    stepped,
    averaged: averagedRunDown(pack, none, played.samples),
    task,
  };
}

/** Size the pack for 10–240 minutes, and where asked for drive it to the edge of collapse or into a peak. */
function fitPack(study: Study, samples: LoopSamples, peakA: number, task: PackTask, seed: number): void {
  const draws = new Draws(seed * 7 + 1);
  const { pack } = study;
  const nominalV = pack.seriesCount * pack.chemistry.nominalVoltageV;
  const meanA = meanCurrentA(samples, nominalV);
  const runS = draws.scaled(900, 200 * 60);
  pack.capacityC = (meanA * runS) / 0.85;
  if (task === 'ordinary') return;
  pack.reserveFraction = 0;
  const middleV = pack.seriesCount * openCircuitVoltageV(openCircuitVoltagesV[pack.chemistry.id], 0.3);
  if (task === 'near-collapse') {
    // All load as constant power; resistance so that the largest power just fails near 30 % charge.
    pack.cutOffVoltageV = 0.4 * pack.chemistry.nominalVoltageV;
    pack.chemistry = { ...pack.chemistry, floorVoltageV: 0 };
    let largestW = 0;
    for (let k = 0; k < samples.count; k++) {
      samples.packPowersW[k]! += samples.packCurrentsA[k]! * nominalV;
      samples.packCurrentsA[k] = 0;
      largestW = Math.max(largestW, samples.packPowersW[k]!);
    }
    pack.cellResistanceOhm = (middleV * middleV) / (4 * largestW) / pack.seriesCount / draws.between(1.5, 2);
    return;
  }
  // The peak current pulls the bus under its cut-off while there is still charge.
  const sagV = middleV - pack.seriesCount * pack.cutOffVoltageV;
  pack.cellResistanceOhm = (Math.max(0.05, sagV) / peakA / pack.seriesCount) * draws.between(0.5, 0.9);
}

describe('the two run-down solvers', () => {
  const outcomes: Outcome[] = [];
  let rejected = 0;
  for (let seed = 1; outcomes.length < wanted && seed < 4 * wanted; seed++) {
    const outcome = outcomeOf(seed);
    if (outcome === null) rejected++;
    else outcomes.push(outcome);
  }

  it('found 200 studies that can be played, rejecting under half of the draws', () => {
    // biome-ignore lint/suspicious/noConsole: the share of rejected draws is part of what this test shows
    console.info(`${outcomes.length} random studies, ${rejected} draws rejected`);
    expect(outcomes).toHaveLength(wanted);
    expect(rejected).toBeLessThan(wanted);
  });

  it('has a third of the studies near collapse or ending on a peak cue', () => {
    const hard = outcomes.filter(({ task }) => task !== 'ordinary');
    expect(hard.length).toBeGreaterThan(wanted * 0.25);
    expect(hard.some(({ stepped }) => stepped.endReason === 'collapse')).toBe(true);
    expect(hard.some(({ stepped }) => stepped.endReason === 'cut-off')).toBe(true);
  });

  it('agree within 0.5 % on the runtime of every one', () => {
    for (const { stepped, averaged } of outcomes) {
      expect(Math.abs(averaged.runtimeS / stepped.runtimeS - 1)).toBeLessThan(5e-3);
    }
  });

  it('name the same end, and warn in the same loop or the next', () => {
    for (const { loopS, stepped, averaged } of outcomes) {
      expect(averaged.endReason).toBe(stepped.endReason);
      if (stepped.warningS === null || averaged.warningS === null) {
        expect(averaged.warningS).toBe(stepped.warningS);
      } else {
        // The voltage falls so slowly there that a millivolt more or less shifts the warning to another peak.
        expect(Math.abs(averaged.warningS - stepped.warningS)).toBeLessThan(1.01 * loopS);
      }
    }
  });
});

describe('a constant-power load near collapse', () => {
  it('has no voltage left once P exceeds E²/4R', () => {
    expect(busVoltageV(8, 0.1, 159, 0)).toBeGreaterThan(4);
    expect(busVoltageV(8, 0.1, 161, 0)).toBeNaN();
    expect(cellResistanceOhm(randomStudy(3).study.pack)).toBeGreaterThan(0);
  });
});
