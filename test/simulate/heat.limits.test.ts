import { describe, expect, it } from 'vitest';
import { copperResistanceRatio } from '../../src/physics/dc-motor.js';
import { prepareCandidate } from '../../src/simulate/candidate.js';
import { holdForEver } from '../../src/simulate/heat-holding.js';
import { settledShowHeat } from '../../src/simulate/heat-in-show.js';
import { HeatLoad } from '../../src/simulate/heat-load.js';
import { CuePlayer, fine } from '../../src/simulate/play-loop.js';
import { thermalOf } from '../../src/simulate/thermal-model.js';
import { solveElsewhere } from '../physics/second-opinion.js';
import { plainCandidate, plainStudy } from './plain-study.js';

const air = 298.15;

describe('a pose held for ever', () => {
  // 1 A through 4.8 Ω, 5 + 10 K/W, 6 + 60 J/K: the figures of a textbook pair of heat lumps.
  const parameters = {
    windingToCaseKPerW: 5,
    caseToAirKPerW: 10,
    windingHeatCapacityJPerK: 6,
    caseHeatCapacityJPerK: 60,
    airTemperatureK: 293.15,
  };
  const power = (windingK: number) => 4.8 * copperResistanceRatio(windingK);

  it('settles where a closed form says: 100.413 K winding, 66.942 K case above the air', () => {
    const held = holdForEver(parameters, power, 400);
    expect(held.windingK! - 293.15).toBeCloseTo(100.413, 3);
    expect(held.caseK! - 293.15).toBeCloseTo(66.942, 3);
  });

  it('reaches its limit when an independent ODE integrator says so', () => {
    const limitK = 293.15 + 80;
    const { timeToLimitS } = holdForEver(parameters, power, limitK);
    const [winding] = solveElsewhere(
      (_t, [w, c]) => {
        const across = (w! - c!) / 5;
        return [(power(w!) - across) / 6, (across - (c! - 293.15) / 10) / 60];
      },
      [293.15, 293.15],
      timeToLimitS!,
    );
    expect(winding).toBeCloseTo(limitK, 1);
  });

  it('runs away above the current at which copper heats itself faster than it cools', () => {
    // α·R_th·I²·R_20 = 1 with 15 K/W and 4.8 Ω: 1.879912 A, closed form.
    const at = (currentA: number) => holdForEver(parameters, (k) => currentA ** 2 * power(k), 500).windingK;
    expect(at(1.879912 * 1.01)).toBeNull();
    expect(at(1.3)).not.toBeNull();
  });
});

describe('the settled show', () => {
  it('is what hours of playing it end in, winding and case', () => {
    const study = plainStudy({
      feature: { ...plainStudy().feature, massKg: 0.9 },
      candidates: [plainCandidate('position-servo', { pulseFrequencyHz: 300 })],
    });
    const candidate = study.candidates[0]!;
    const { model } = prepareCandidate(study, candidate);
    const { samples } = new CuePlayer(model, study.show.loop, [], { ...fine, intervals: 6 }).play();
    const heat = new HeatLoad(model, samples, 0);
    const parameters = thermalOf(candidate.sheet, { gustMPerS: 0, temperatureK: air, buried: false });
    const settled = settledShowHeat(parameters, heat)!;
    // Played in small steps from cold, copper at the temperature of the moment.
    let winding = air;
    let box = air;
    let hottest = 0;
    let hottestCase = 0;
    const loops = 200;
    for (let loop = 0; loop < loops; loop++) {
      for (let k = 0; k < heat.count; k++) {
        const steps = Math.max(1, Math.ceil(heat.durationsS[k]! / 0.05));
        const stepS = heat.durationsS[k]! / steps;
        for (let step = 0; step < steps; step++) {
          const across = (winding - box) / parameters.windingToCaseKPerW;
          const out = (box - air) / parameters.caseToAirKPerW;
          winding += (stepS * (heat.copperW(k, winding) - across)) / parameters.windingHeatCapacityJPerK;
          box += (stepS * (heat.gearHeatsW[k]! + across - out)) / parameters.caseHeatCapacityJPerK;
          if (loop === loops - 1) {
            hottest = Math.max(hottest, winding);
            hottestCase = Math.max(hottestCase, box);
          }
        }
      }
    }
    expect(settled.windingK - air).toBeGreaterThan(10);
    expect((settled.windingK - air) / (hottest - air)).toBeCloseTo(1, 3);
    expect((settled.caseK - air) / (hottestCase - air)).toBeCloseTo(1, 3);
  });
});
