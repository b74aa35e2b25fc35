import { bothBurdens } from './burdens.js';
import { changeKinds } from './kinds.js';
import { type LesserChange, type LesserChangeId, lesserChangeIds } from './lesser-change.js';
import type { Proposal, Setup } from './proposal.js';

/** Of so many of the best changes pairs are made. */
const paired = 3;

/** Whether a change helps at all: a limit now holds, or score, runtime or playing time grew. */
export function helps({ gain, passes }: LesserChange, passedBefore: boolean | null): boolean {
  if (passes === false && passedBefore !== false) return false;
  const gains = [gain.score, gain.runtimeS ?? 0, gain.playingTimeS ?? 0];
  return (passes === true && passedBefore !== true) || gains.some((change) => change > 1e-9);
}

/**
 * The pairs of the best changes, worked out one on top of the other. Of changes that stand in for each other,
 * two springs or two speeds, only the best one counts among the best three.
 * @param helpful changes that help, the best first
 */
export function bestPairs(helpful: LesserChange[], setup: Setup): Proposal[] {
  const best = oneOfEachFamily(helpful.map(({ parts }) => parts[0]!)).slice(0, paired);
  const pairs = best.flatMap((first, index) =>
    best.slice(index + 1).map((second) => [first, second] as const),
  );
  return pairs.flatMap(([a, b]) => {
    const pair = pairOf(a, b, setup);
    return pair === null ? [] : [pair];
  });
}

function oneOfEachFamily(ids: LesserChangeId[]): LesserChangeId[] {
  const families = new Set<string>();
  return ids.filter((id) => {
    const { family } = changeKinds[id];
    if (families.has(family)) return false;
    families.add(family);
    return true;
  });
}

/** Two changes made one after the other; null when the second makes no sense any more after the first. */
function pairOf(a: LesserChangeId, b: LesserChangeId, setup: Setup): Proposal | null {
  const [first, second] = [a, b].sort((p, q) => lesserChangeIds.indexOf(p) - lesserChangeIds.indexOf(q)) as [
    LesserChangeId,
    LesserChangeId,
  ];
  const one = changeKinds[first].propose(setup);
  if (!('proposal' in one)) return null;
  const two = changeKinds[second].propose(one.proposal.setup);
  return 'proposal' in two ? combined(one.proposal, two.proposal) : null;
}

/** @param two worked out on the setup that `one` leaves */
function combined(one: Proposal, two: Proposal): Proposal {
  const { title } = two;
  return {
    parts: [...one.parts, ...two.parts],
    title: `${one.title}, and ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
    actions: [...one.actions, ...two.actions],
    settings: [...one.settings, ...two.settings],
    burden: bothBurdens(one.burden, two.burden),
    setup: two.setup,
    addedBodyMassKg: one.addedBodyMassKg + two.addedBodyMassKg,
    packsInTurnCount: packsInTurn(one, two),
    corrected: (run) => two.corrected(one.corrected(run)),
    sideEffects: (before, after) => [
      ...new Set([...one.sideEffects(before, after), ...two.sideEffects(before, after)]),
    ],
  };
}

/** Whichever of the two changes the packs says how many there are. */
function packsInTurn(one: Proposal, two: Proposal): number {
  const ofOne = one.parts.some((id) => changeKinds[id].family === 'pack');
  return ofOne ? one.packsInTurnCount : two.packsInTurnCount;
}
