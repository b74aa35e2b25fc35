import type { CandidateAssessment, DayOutcome } from '../../src/assess/assessment.js';
import type { DayPlan } from '../../src/assess/day/day-plan.js';

function planOf({ id, nominal }: CandidateAssessment): DayPlan {
  const frame = {
    packsConnectedCount: 1,
    runtimeP10S: null,
    doneProbability: null,
    packsSureCount: null,
    sureBodyMassKg: null,
    candidate: id,
    packsCarriedCount: 2,
    restCurrentA: 0.02,
    dueSocFraction: 0.3,
    endSocFraction: 0.2,
    aircraft: {
      energyJ: 34632,
      category: 'free' as const,
      text: 'One pack holds 9.62 Wh: passenger aircraft take up to 100 Wh in the cabin without approval.',
    },
    packsMassKg: 0.156,
    bodyMassKg: nominal.bodyMassKg,
    neededBodyMassKg: nominal.bodyMassKg,
  };
  if (nominal.runtimeS === null) {
    const nothing = {
      packsNeededCount: null,
      packsBeforeWarningCount: null,
      packsUsedCount: 0,
      swapCount: 0,
      swapWorkTimeS: null,
    };
    return {
      ...frame,
      ...nothing,
      status: 'cannot-play',
      summary: 'The drive cannot play the cue list, so there is no day to plan.',
      darkS: 5700,
      warningToEndS: null,
      ...{ blocks: [], segments: [], swaps: [], charges: [], packs: [], bring: [] },
    };
  }
  const needsTwo = nominal.runtimeS < 5700;
  const [first, pause, second] = [3000, 3900, 6600];
  return {
    ...frame,
    status: 'done',
    summary: needsTwo
      ? '2 packs do the day with 1 swap, in “pause” after 50 min; 31 % is left in the emptiest pack at the end.'
      : 'One pack does the day; 24 % is left in the emptiest pack at the end.',
    packsNeededCount: needsTwo ? 2 : 1,
    packsBeforeWarningCount: needsTwo ? 2 : 1,
    packsUsedCount: needsTwo ? 2 : 1,
    swapCount: needsTwo ? 1 : 0,
    swapWorkTimeS: needsTwo ? nominal.swapTimeS : 0,
    darkS: 0,
    warningToEndS: nominal.warningS === null ? null : nominal.runtimeS - nominal.warningS,
    blocks: [
      {
        block: 'first half',
        activity: 'show',
        startS: 0,
        endS: first,
        swapAllowed: false,
        charger: false,
        meanCurrentA: 0.9,
        chargeC: 2700,
      },
      {
        block: 'pause',
        activity: 'off',
        startS: first,
        endS: pause,
        swapAllowed: true,
        charger: true,
        meanCurrentA: 0,
        chargeC: 0,
      },
      {
        block: 'second half',
        activity: 'show',
        startS: pause,
        endS: second,
        swapAllowed: false,
        charger: false,
        meanCurrentA: 0.9,
        chargeC: 2430,
      },
    ],
    segments: [
      {
        block: 'first half',
        activity: 'show',
        startS: 0,
        endS: first,
        packIndex: 0,
        socStartFraction: 1,
        socEndFraction: 0.38,
        powered: true,
      },
      {
        block: 'second half',
        activity: 'show',
        startS: pause,
        endS: second,
        packIndex: needsTwo ? 1 : 0,
        socStartFraction: needsTwo ? 1 : 0.38,
        socEndFraction: needsTwo ? 0.44 : 0.24,
        powered: true,
      },
    ],
    swaps: needsTwo
      ? [
          {
            block: 'pause',
            blockIndex: 1,
            timeS: first,
            outPackIndex: 0,
            inPackIndex: 1,
            outSocFraction: 0.38,
            inSocFraction: 1,
            fitsBlock: true,
          },
        ]
      : [],
    charges: [
      {
        block: 'pause',
        packIndex: needsTwo ? 0 : 1,
        startS: first,
        endS: pause,
        socStartFraction: 0.38,
        socEndFraction: 0.63,
      },
    ],
    packs: [
      { packIndex: 0, used: true, socEndFraction: 0.63, fullAgainS: null, chargeLeftS: 2400 },
      {
        packIndex: 1,
        used: needsTwo,
        socEndFraction: needsTwo ? 0.44 : 1,
        fullAgainS: null,
        chargeLeftS: needsTwo ? 3200 : 0,
      },
    ],
    bring: [
      { item: 'pack (2S small pack)', count: 3, reason: 'for the day, and one more in case a pack is weak' },
      { item: 'meter', count: 1, reason: 'cell voltages before every swap' },
    ],
  };
}

/** The day with every candidate. */
export function createDay(candidates: CandidateAssessment[]): DayOutcome {
  return { candidate: candidates[0]?.id ?? '', changed: null, plans: candidates.map(planOf) };
}
