import {
  settledCaseRiseK,
  settledWindingK,
  type ThermalParameters,
  twoNode,
  twoNodeStep,
} from '../physics/thermal.js';

/** What happens when one hold is held for ever, from cold. */
export interface HoldingHeat {
  /** Settled temperatures; null = runaway, no settled state below 400 °C. */
  windingK: number | null;
  caseK: number | null;
  /** Time until the winding reaches its limit; null when it never does. */
  timeToLimitS: number | null;
}

/** Called after every step, for charts. */
export type HeatListener = (timeS: number, windingK: number, caseK: number) => void;

/** After this long anything slower is told as "never" . */
const longestHoldS = 48 * 3600;

/** A step lasts this share of the winding's own time constant at first, and grows by the ratio below. */
const firstStepFraction = 0.02;
const stepGrowth = 1.01;

/**
 * Hold one pose for ever, starting at the temperature of the air. (M19)
 * @param powerW heat in the copper at a winding temperature in kelvin
 * @param limitK winding limit
 */
export function holdForEver(
  parameters: ThermalParameters,
  powerW: (windingK: number) => number,
  limitK: number,
  listener?: HeatListener,
  untilS = 0,
): HoldingHeat {
  const airK = parameters.airTemperatureK;
  const windingK = settledWindingK(parameters, powerW, 0);
  const caseK = windingK === null ? null : airK + settledCaseRiseK(parameters, powerW(windingK), 0);
  const reaches = windingK === null || windingK > limitK;
  let timeToLimitS: number | null = airK >= limitK ? 0 : null;
  if (!reaches && listener === undefined) return { windingK, caseK, timeToLimitS };
  const node = twoNode(parameters);
  const rises = new Float64Array(2);
  const trial = new Float64Array(2);
  let timeS = 0;
  let stepS = firstStepFraction / node.fastRatePerS;
  const step = (lengthS: number): void => {
    // Heat at the middle of the step, found by a half step with the heat at its start.
    trial.set(rises);
    twoNodeStep(node, trial, powerW(airK + rises[0]!), 0, lengthS / 2);
    const middleW = powerW(airK + trial[0]!);
    trial.set(rises);
    twoNodeStep(node, trial, middleW, 0, lengthS);
  };
  while (timeS < longestHoldS && ((reaches && timeToLimitS === null) || timeS < untilS)) {
    step(stepS);
    if (timeToLimitS === null && airK + trial[0]! >= limitK) {
      let before = 0;
      let after = stepS;
      for (let halving = 0; halving < 30; halving++) {
        const middle = (before + after) / 2;
        step(middle);
        if (airK + trial[0]! >= limitK) after = middle;
        else before = middle;
      }
      timeToLimitS = timeS + after;
      step(stepS);
    }
    rises.set(trial);
    timeS += stepS;
    listener?.(timeS, airK + rises[0]!, airK + rises[1]!);
    if (airK + rises[0]! > 1000) break;
    stepS *= stepGrowth;
  }
  return { windingK, caseK, timeToLimitS };
}
