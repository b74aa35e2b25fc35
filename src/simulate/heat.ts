import type { Candidate, Study } from '../study/study.js';
import type { CandidateModel } from './candidate-model.js';
import { holdForEver } from './heat-holding.js';
import { settledShowHeat } from './heat-in-show.js';
import { bounceCurrentsA, HeatLoad, holdHeatW } from './heat-load.js';
import { showHeatSeries } from './heat-series.js';
import { firstHoldPosition } from './held-poses.js';
import type { LoopSamples } from './loop-samples.js';
import { heatBounceFraction } from './mechanics.js';
import type { HeatSeries, NominalOutcome } from './outcome.js';
import { thermalOf } from './thermal-model.js';

/** The part of the outcome that is about heat. */
export type HeatOutcome = Pick<
  NominalOutcome,
  | 'windingTemperatureK'
  | 'caseTemperatureK'
  | 'settledHoldWindingK'
  | 'settledHoldCaseK'
  | 'thermalRunaway'
  | 'timeToLimitHoldingS'
>;

/** Shortest stretch of a held pose worth drawing. */
const shortestSeriesS = 1800;

/**
 * Heat of one drive in the show and at an endless first hold. (M19)
 * @param samples the loop, or null when a move cannot be made (then only the hold is computed)
 */
export function simulateHeat(
  study: Study,
  candidate: Candidate,
  model: CandidateModel,
  samples: LoopSamples | null,
  runtimeS: number,
  withSeries = true,
): { outcome: HeatOutcome; series: { heatInShow: HeatSeries; heatHolding: HeatSeries } } {
  const parameters = thermalOf(candidate.sheet, study.air);
  const bounce = heatBounceFraction(study.carrier.activity);
  const load = samples === null ? null : new HeatLoad(model, samples, bounce);
  const inShow = load === null ? null : settledShowHeat(parameters, load);
  const held = firstHoldPosition(study.show);
  const currentsA = held === null || model.unpoweredHold ? [0] : bounceCurrentsA(model, held, bounce);
  const heatHolding = emptySeries();
  const holding = holdForEver(
    parameters,
    (windingK) => holdHeatW(model, currentsA, windingK),
    candidate.sheet.windingLimitK,
    withSeries ? recorder(heatHolding, parameters.airTemperatureK) : undefined,
    withSeries ? Math.max(shortestSeriesS, runtimeS) : 0,
  );
  return {
    outcome: {
      windingTemperatureK: inShow?.windingK ?? null,
      caseTemperatureK: inShow?.caseK ?? null,
      settledHoldWindingK: holding.windingK,
      settledHoldCaseK: holding.caseK,
      thermalRunaway: holding.windingK === null || (load !== null && inShow === null),
      timeToLimitHoldingS: holding.timeToLimitS,
    },
    series: {
      heatInShow: load === null || !withSeries ? emptySeries() : showHeatSeries(parameters, load, runtimeS),
      heatHolding,
    },
  };
}

const emptySeries = (): HeatSeries => ({ timesS: [], windingTemperaturesK: [], caseTemperaturesK: [] });

/** Keep points that lie a little apart in time, more densely at the beginning. */
function recorder(series: HeatSeries, airK: number) {
  series.timesS.push(0);
  series.windingTemperaturesK.push(airK);
  series.caseTemperaturesK.push(airK);
  return (timeS: number, windingK: number, caseK: number): void => {
    const lastS = series.timesS[series.timesS.length - 1]!;
    if (timeS < 1.04 * lastS + 1) return;
    series.timesS.push(timeS);
    series.windingTemperaturesK.push(windingK);
    series.caseTemperaturesK.push(caseK);
  };
}
