import { decidingPowerCut, type NominalOutcome } from '../../simulate/outcome.js';
import type { Study } from '../../study/study.js';
import { amperes, joules, minutes } from '../figures.js';
import { goesTo } from '../unpowered-words.js';
import type { BringItem, DayPlan } from './day-plan.js';

type Planned = Omit<DayPlan, 'summary' | 'bring'>;

/** What to bring to the day, each with its reason; what the day rests on comes first. */
export function bringList(study: Study, outcome: NominalOutcome, plan: Planned): BringItem[] {
  return [
    packs(study, plan),
    ...charger(plan),
    ...fuses(study),
    ...againstFalling(study, outcome),
    ...alarm(outcome, plan),
    {
      item: 'meter',
      count: 1,
      reason: 'cell voltages before every swap, and whether the fuse is whole',
    },
    ...pouch(study),
    { item: 'insulating tape', count: 1, reason: 'bare ends and the terminals of packs that are not in use' },
    {
      item: 'drive screws and the key for them',
      count: 1,
      reason: 'they shake loose while the feature moves',
    },
    { item: 'cord', count: 1, reason: 'ties the feature down when the drive gives up' },
  ];
}

function packs({ pack }: Study, plan: Planned): BringItem {
  const { packsCarriedCount, packsConnectedCount: connected } = plan;
  const hasDraws = plan.doneProbability !== null;
  const packsNeededCount = hasDraws ? plan.packsSureCount : plan.packsNeededCount;
  const item = `pack (${pack.label})`;
  if (packsNeededCount === null) {
    const reason = `as carried; no number does the day${hasDraws ? ' in nine draws in ten' : ''}`;
    return { item, count: connected * packsCarriedCount, reason };
  }
  const needed = connected * packsNeededCount;
  const together = connected > 1 ? `${connected} of them side by side, ` : '';
  const reason =
    packsNeededCount > packsCarriedCount
      ? `${together}the day takes ${needed}, and one more in case a pack is weak`
      : `${together}for the day, and one more in case a pack is weak`;
  return { item, count: needed + 1, reason };
}

function charger({ blocks }: Planned): BringItem[] {
  const places = blocks.filter((block) => block.charger).map(({ block }) => `“${block}”`);
  if (places.length === 0) return [];
  return [{ item: 'charger and its lead', count: 1, reason: `there is a socket in ${places.join(', ')}` }];
}

function fuses({ wiring: { fuseRatingA } }: Study): BringItem[] {
  return fuseRatingA === null
    ? [{ item: 'fuse and holder', count: 1, reason: 'none is fitted: put one close to the pack' }]
    : [{ item: `fuse of ${amperes(fuseRatingA)}`, count: 2, reason: 'the fitted rating, no larger one' }];
}

function againstFalling({ feature }: Study, outcome: NominalOutcome): BringItem[] {
  const { stays, fallS, impactEnergyJ, towards } = decidingPowerCut(outcome);
  if (stays) return [];
  const hit = fallS === null ? 'it gives way' : `it lands with ${joules(impactEnergyJ ?? 0)}`;
  const does = towards === 'upper' ? goesTo(towards, feature.kind) : 'comes down';
  return [{ item: 'stop or tether', count: 1, reason: `without power the feature ${does}: ${hit}` }];
}

/** Where the end comes before any warning, only a clock tells. */
function alarm({ runtimeS, warningS }: NominalOutcome, { warningToEndS, runtimeP10S }: Planned): BringItem[] {
  if (runtimeS === null) return [];
  if (warningS !== null && warningToEndS !== null) {
    const reason = `it sounds about ${minutes(warningToEndS)} before the end`;
    return [{ item: 'low-voltage alarm', count: 1, reason }];
  }
  const early = 'the reserve is reached before any warning';
  const reason =
    runtimeP10S === null
      ? `set to less than ${minutes(runtimeS)} of show: ${early}`
      : `set to ${minutes(runtimeP10S)} of show, which nine draws in ten reach: ${early}`;
  return [{ item: 'timer', count: 1, reason }];
}

function pouch({ pack }: Study): BringItem[] {
  if (pack.chemistry.id === 'nimh') return [];
  return [
    { item: 'fire-safe pouch', count: 1, reason: 'for every pack that is not in use, and while charging' },
  ];
}
