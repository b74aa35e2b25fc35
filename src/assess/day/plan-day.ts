import type { NominalOutcome } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import type { Pack } from '../../study/supply.js';
import { aircraftLine } from './aircraft.js';
import { bringList } from './bring.js';
import { chargeToFullS } from './charging.js';
import { type Consumption, consumptionOf } from './consumption.js';
import type { DayBlockUse, DayPlan, DayStatus } from './day-plan.js';
import { summaryOf } from './day-words.js';
import type { DrawnDay } from './drawn-day.js';
import { stillCurrentA } from './rest-current.js';
import { playDay, type Schedule, type ScheduleParts } from './schedule.js';

/** More packs than this nobody carries to one day. */
const mostPacks = 24;

/**
 * The event day of day.csv with one candidate: charge used, swaps in the blocks that allow them, charging, mass, and
 * what to bring. Each swap comes as late as the allowed blocks permit, before the warning where that can be done.
 *
 * Charge of the show from the run-down of one pack; of `still`, what resting drives and loads draw that are always
 * on; of `off`, none. The cues before the loop are left out: they count once a day, not once a block.
 * @param outcome of this candidate, from nominal figures
 * @param drawn what the draws say of the day; null without draws
 * @param singlePack the pack as it is bought, where several of them are connected as the pack of the study
 * @returns null without a day
 */
export function planDay(
  study: Study,
  candidate: Candidate,
  outcome: NominalOutcome,
  drawn: DrawnDay | null = null,
  singlePack = study.pack,
): DayPlan | null {
  if (study.day.length === 0) return null;
  const consumption = consumptionOf(study, candidate, outcome);
  if (consumption === null) return unplayable(study, candidate, outcome, singlePack);
  const { endSocFraction } = consumption;
  const dueSocFraction = consumption.warningSocFraction ?? endSocFraction;
  const careful = scheduleParts(study, consumption, dueSocFraction);
  const bare = scheduleParts(study, consumption, endSocFraction);
  const carried = study.packsCarriedCount;
  const first = playDay({ ...careful, packCount: carried });
  const schedule = first.darkS > 0 ? playDay({ ...bare, packCount: carried }) : first;
  const packsNeededCount = fewestPacks(bare);
  const status = statusOf(first, schedule, packsNeededCount);
  const plan = {
    ...frameOf(study, candidate, outcome, singlePack),
    status,
    packsNeededCount,
    packsBeforeWarningCount: fewestPacks(careful),
  };
  const filled: Omit<DayPlan, 'summary' | 'bring'> = {
    ...plan,
    ...played(study, schedule, outcome.swapTimeS),
    ...drawnPart(drawn),
    restCurrentA: consumption.restCurrentA,
    dueSocFraction,
    endSocFraction,
    blocks: blockUses(study, consumption),
    neededBodyMassKg: withPacks(study, outcome, packsNeededCount),
    sureBodyMassKg: withPacks(study, outcome, drawn?.packsSureCount ?? null),
  };
  return { ...filled, summary: summaryOf(study, filled), bring: bringList(study, outcome, filled) };
}

/** Fewest packs that do the day; null when no number does, or the show cannot be played. */
export function packsNeeded(study: Study, candidate: Candidate, outcome: NominalOutcome): number | null {
  const consumption = consumptionOf(study, candidate, outcome);
  return consumption && fewestPacks(scheduleParts(study, consumption, consumption.endSocFraction));
}

const drawnPart = (drawn: DrawnDay | null) => ({
  runtimeP10S: drawn?.runtimeP10S ?? null,
  doneProbability: drawn?.doneProbability ?? null,
  packsSureCount: drawn?.packsSureCount ?? null,
});

function scheduleParts(
  study: Study,
  { chargeC, currentsA }: Consumption,
  floorFraction: number,
): ScheduleParts {
  return {
    blocks: study.day,
    currentsA: study.day.map(({ activity }) => currentsA[activity]),
    packChargeC: chargeC,
    packCount: 1,
    floorFraction,
    chargeRatePerH: study.pack.chargeRatePerH,
  };
}

/** Fewest packs with which no block goes dark; null when even many do not help. */
function fewestPacks(parts: ScheduleParts): number | null {
  for (let packCount = 1; packCount <= mostPacks; packCount++) {
    if (playDay({ ...parts, packCount }).darkS === 0) return packCount;
  }
  return null;
}

function statusOf(careful: Schedule, carried: Schedule, needed: number | null): DayStatus {
  if (careful.darkS === 0) return 'done';
  if (carried.darkS === 0) return 'past-warning';
  return needed === null ? 'stretch-too-long' : 'more-packs';
}

/** What does not depend on how the day goes. */
function frameOf(study: Study, candidate: Candidate, outcome: NominalOutcome, singlePack: Pack) {
  const { packsCarriedCount, pack } = study;
  const { runtimeS, warningS } = outcome;
  return {
    candidate: candidate.id,
    packsConnectedCount: Math.round(pack.capacityC / singlePack.capacityC),
    packsCarriedCount,
    warningToEndS: runtimeS === null || warningS === null ? null : runtimeS - warningS,
    aircraft: aircraftLine(singlePack),
    packsMassKg: pack.massKg === null ? null : packsCarriedCount * pack.massKg,
    bodyMassKg: outcome.bodyMassKg,
  };
}

function played(study: Study, schedule: Schedule, swapTimeS: number | null) {
  const { segments, charges, darkS, usedCount, socFractions, fullAgainTimesS } = schedule;
  return {
    packsUsedCount: usedCount,
    swapCount: schedule.swaps.length,
    swapWorkTimeS: swapTimeS === null ? null : schedule.swaps.length * swapTimeS,
    darkS,
    segments,
    swaps: schedule.swaps.map((swap) => ({
      ...swap,
      fitsBlock: swapTimeS === null ? null : study.day[swap.blockIndex]!.durationS >= swapTimeS,
    })),
    charges,
    packs: socFractions.map((socEndFraction, packIndex) => ({
      packIndex,
      used: segments.some((segment) => segment.packIndex === packIndex),
      socEndFraction,
      fullAgainS: fullAgainTimesS[packIndex]!,
      chargeLeftS: chargeToFullS(socEndFraction, study.pack.chargeRatePerH),
    })),
  };
}

function blockUses({ day }: Study, { currentsA }: Consumption): DayBlockUse[] {
  let startS = 0;
  return day.map(({ block, activity, durationS, swapAllowed, charger }) => {
    const meanCurrentA = currentsA[activity];
    const use = { block, activity, startS, endS: startS + durationS, swapAllowed, charger, meanCurrentA };
    startS += durationS;
    return { ...use, chargeC: meanCurrentA * durationS };
  });
}

/** Mass on the body with another number of packs. */
function withPacks(study: Study, { bodyMassKg }: NominalOutcome, packCount: number | null): number | null {
  const { massKg } = study.pack;
  if (bodyMassKg === null || massKg === null || packCount === null) return null;
  return bodyMassKg + (packCount - study.packsCarriedCount) * massKg;
}

/** The day of a drive that cannot play the show: nothing to plan, and said so. */
function unplayable(study: Study, candidate: Candidate, outcome: NominalOutcome, singlePack: Pack): DayPlan {
  const filled: Omit<DayPlan, 'summary' | 'bring'> = {
    ...frameOf(study, candidate, outcome, singlePack),
    status: 'cannot-play',
    packsNeededCount: null,
    packsBeforeWarningCount: null,
    packsUsedCount: 0,
    swapCount: 0,
    swapWorkTimeS: null,
    ...drawnPart(null),
    darkS: study.day.reduce((sum, { activity, durationS }) => sum + (activity === 'off' ? 0 : durationS), 0),
    restCurrentA: stillCurrentA(study, candidate),
    dueSocFraction: study.pack.reserveFraction,
    endSocFraction: study.pack.reserveFraction,
    blocks: [],
    segments: [],
    swaps: [],
    charges: [],
    packs: [],
    neededBodyMassKg: null,
    sureBodyMassKg: null,
  };
  return { ...filled, summary: summaryOf(study, filled), bring: [] };
}
