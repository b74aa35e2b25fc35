import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { amperes, decimal, minutes, percent } from '../figures.js';
import { about, general } from './caution.js';

/** Share of stall effort that a drive holds for long without wearing out, and where it is in danger (from experience). */
const carefulHold = 0.25;
const harmfulHold = 0.4;

/** What a stall figure from a listing is worth: the middle of the spread that listings get (from experience). */
const listingDiscount = 0.85;

/** Readings of one current that differ by more than this factor deserve a measurement (from experience). */
const wideDisagreement = 2;

/** Computed over measured runtime that data sheets alone lead to: about a quarter off either way (from experience). */
const agreeingRatios = { least: 0.75, most: 1.33 };

/** Cautions about holding a pose: effort, wear, and how well the hold current is known. */
export function holdingCautions(judged: Judged): Caution[] {
  return [...holdEffort(judged), ...holdCurrentUncertain(judged)];
}

function holdEffort(judged: Judged): Caution[] {
  const { holdEffortRatio, holdCurrentUsed } = judged.run.nominal;
  if (holdEffortRatio === null || holdCurrentUsed === 'unpowered') return [];
  const listed = judged.candidate.sheet.figuresFrom === 'listing';
  const median = judged.drawn?.holdEffortRatio ?? null;
  const share = median ?? holdEffortRatio / (listed ? listingDiscount : 1);
  if (share <= carefulHold) return [];
  const why = median !== null ? ' in half of the draws or more' : '';
  const discount = listed && median === null ? ', a listing being worth 85 % of what it says' : '';
  const words = {
    figure: `${percent(share)} of stall`,
    text: `Holds at ${percent(share)} of its stall effort${discount}${why}; gears and winding last when a hold stays under ${percent(carefulHold)}.`,
    action:
      'Balance the feature with an assist spring, rest it on a stop during long holds, or take a stronger drive.',
  };
  return [about(judged, 'hold-effort', share > harmfulHold ? 'severe' : 'caution', words)];
}

function holdCurrentUncertain(judged: Judged): Caution[] {
  const { nominal } = judged.run;
  if (nominal.holdCurrentUsed !== 'pulse-model' || readOnIt(judged)) return [];
  const { holdPackCurrentPulseModelA: pulsesA, holdPackCurrentLinearRuleA: linearA } = nominal;
  const [low, high] = [pulsesA, linearA].sort((a, b) => a - b);
  if (low === undefined || high === undefined || low <= 0 || high / low < wideDisagreement) return [];
  const words = {
    figure: `${amperes(pulsesA)} or ${amperes(linearA)}`,
    text: `At the pack the hold current is ${amperes(pulsesA)} by the pulse model, which the result uses, and ${amperes(linearA)} by the linear rule: a factor of ${decimal(high / low, 1)}.`,
    action: 'Measure the hold current of one drive at a known load and enter hold_current with hold_effort.',
  };
  return [about(judged, 'hold-current-uncertain', 'note', words)];
}

/** Whether measured.csv has a hold current of this drive: there is nothing left to ask for. */
const readOnIt = ({ study, candidate }: Judged): boolean =>
  study.baselineId === candidate.id && study.measured.some(({ quantity }) => quantity === 'hold_current');

/** What was measured on the present drive against what is computed for it. */
export function measuredRuntime(judged: Judged): Caution[] {
  const measured = judged.study.measured.find((measurement) => measurement.quantity === 'runtime');
  const computedS = judged.run.nominal.runtimeS;
  if (!measured || computedS === null || judged.study.baselineId !== judged.candidate.id) return [];
  const ratio = computedS / measured.value;
  if (ratio > agreeingRatios.least && ratio < agreeingRatios.most) return [];
  const words = {
    figure: `${minutes(computedS)} against ${minutes(measured.value)}`,
    text: `Computed runtime of the present drive is ${minutes(computedS)}, measured is ${minutes(measured.value)}. Figures for the other candidates rest on the same pack and load.`,
    action:
      'Weigh the feature, check the pack with a full discharge, and enter what differs before you trust the ranking.',
  };
  return [general('measurement-disagrees', 'caution', words)];
}
