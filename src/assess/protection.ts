import { fuseContinuousCurrentA, wireContinuousCurrentA } from '../physics/wire.js';
import type { CandidateRun } from '../simulate/outcome.js';
import type { Candidate, Study } from '../study/study.js';
import type { Pack, Wiring } from '../study/supply.js';
import type { ProtectionOutcome } from './assessment.js';
import { amperes, milliseconds } from './figures.js';

/** Highest discharge rating that a label is believed, in 1/h (from experience). */
export const believedRatingPerH = 25;

/** A board must stay out of the show: its trip lies this much above the largest current (from experience). */
const tripHeadroom = 1.25;

/** A start-up surge that the board does not wait out must stay so far below its trip (from experience). */
const startUpHeadroom = 1.1;

/** How much longer than the start-up surge the board must wait, at least (from experience). */
const delayHeadroom = 2;

/** Shortest delay worth asking for: shorter ones trip on the edges of a motor's pulses (from experience). */
const shortestDelayS = 0.02;

/** A wire bears this multiple of its continuous current until a board or a person acts (from experience). */
const wireOverload = 1.5;

/** The start-up surge of a motor lasts this many mechanical time constants. */
const surgeTimeConstants = 3;

/** Trip currents that boards are sold with, in steps of half an ampere. */
const tripStepA = 0.5;

/** What the pack's label allows for ever, the label being believed up to 25C; null when it says nothing. */
export function packContinuousA(pack: Pack): number | null {
  if (pack.dischargeRatingPerH === null) return null;
  return (Math.min(pack.dischargeRatingPerH, believedRatingPerH) * pack.capacityC) / 3600;
}

/** What the fuse carries for ever; null when none is fitted. */
export function fuseContinuousA(wiring: Wiring): number | null {
  return wiring.fuseRatingA === null ? null : fuseContinuousCurrentA(wiring.fuseRatingA);
}

/** What the wire carries for ever; null for one without a cross-section. */
export function wireContinuousA(wiring: Wiring): number | null {
  return wiring.areaM2 > 0 ? wireContinuousCurrentA(wiring.areaM2) : null;
}

/** Length of the start-up surge of one candidate. */
export function surgeS(candidate: Candidate): number {
  return surgeTimeConstants * candidate.sheet.mechanicalTimeConstantS;
}

/**
 * Which trip current and delay the protection board needs for one candidate: above every current of the show,
 * below what pack and wire survive. Never an advice to run without one.
 */
export function protectionOf(study: Study, candidate: Candidate, run: CandidateRun): ProtectionOutcome {
  const { demand } = run;
  const { wiring, pack } = study;
  const advice = boardFor(study, candidate, run);
  return {
    candidate: candidate.id,
    peakCurrentA: demand.peakCurrentA,
    tenSecondCurrentA: demand.tenSecondCurrentA,
    meanCurrentA: demand.meanCurrentA,
    startUpCurrentA: demand.startUpCurrentA,
    packContinuousA: packContinuousA(pack),
    fuseContinuousA: fuseContinuousA(wiring),
    protectionTripA: wiring.protectionTripA,
    wireContinuousA: wireContinuousA(wiring),
    adviceTripA: advice.tripA,
    adviceDelayS: advice.delayS,
    advice: advice.text + fittedBoard(study, candidate, run, advice),
  };
}

interface Board {
  tripA: number | null;
  delayS: number | null;
  text: string;
}

function boardFor(study: Study, candidate: Candidate, { demand }: CandidateRun): Board {
  if (demand.peakCurrentA === null) {
    return { tripA: null, delayS: null, text: 'Cannot be said: the drive cannot play the cue list.' };
  }
  const ceilingA = highestTripA(study);
  const runTripA = roundedUp(tripHeadroom * demand.peakCurrentA);
  const startA = demand.startUpCurrentA ?? 0;
  const wholeTripA = Math.max(runTripA, roundedUp(startUpHeadroom * startA));
  if (wholeTripA <= ceilingA) return fitting(wholeTripA, shortestDelayS, ceilingA, '');
  const wait = `the start-up of ${amperes(startA)} lasts ${milliseconds(surgeS(candidate))}`;
  if (runTripA <= ceilingA) return fitting(runTripA, delayHeadroom * surgeS(candidate), ceilingA, wait);
  return {
    tripA: null,
    delayS: null,
    text: `No board fits: the show takes up to ${amperes(demand.peakCurrentA)}, pack and wire bear ${amperes(ceilingA)}. Fit a fuse close to the pack and a low-voltage alarm, and write a cue list with slower moves; or take a larger pack and thicker wire.`,
  };
}

function fitting(tripA: number, delayS: number, ceilingA: number, because: string): Board {
  const upTo = Number.isFinite(ceilingA) ? `, at most ${amperes(ceilingA)}` : '';
  const reason = because === '' ? '' : ` (${because})`;
  const text = `Protection board: trip from ${amperes(tripA)}${upTo}, delay at least ${milliseconds(delayS)}${reason}.`;
  return { tripA, delayS, text };
}

/** Whether the board that is fitted will do; empty when none is, or when none would. */
function fittedBoard(study: Study, candidate: Candidate, { demand }: CandidateRun, advice: Board): string {
  const { protectionTripA: fittedA, protectionDelayS: fittedS } = study.wiring;
  if (fittedA === null || advice.tripA === null) return '';
  const startA = demand.startUpCurrentA ?? 0;
  const neededS = startA > fittedA ? delayHeadroom * surgeS(candidate) : shortestDelayS;
  const name = ` The fitted one, ${amperes(fittedA)}${fittedS === null ? '' : ` and ${milliseconds(fittedS)}`},`;
  if (fittedA < tripHeadroom * (demand.peakCurrentA ?? 0)) return `${name} trips too early.`;
  if (fittedA > highestTripA(study)) return `${name} trips too late for pack and wire.`;
  if (fittedS === null) return `${name} will do if it waits ${milliseconds(neededS)}.`;
  return fittedS < neededS ? `${name} does not wait long enough.` : `${name} will do.`;
}

/** What pack and wire survive; a fuse that guards the wire leaves only the pack to the board. */
function highestTripA({ pack, wiring }: Study): number {
  const wireA = wireOverload * (wireContinuousA(wiring) ?? Infinity);
  const fuseGuardsWire = wiring.fuseRatingA !== null && wiring.fuseRatingA <= wireA;
  return Math.min(packContinuousA(pack) ?? Infinity, fuseGuardsWire ? Infinity : wireA);
}

function roundedUp(currentA: number): number {
  return Math.ceil(currentA / tripStepA - 1e-9) * tripStepA;
}
