import { gravityEffortAt } from '../../physics/load.js';
import { prepareCandidate } from '../../simulate/candidate.js';
import type { Cue } from '../../study/show.js';
import { newtons, percent, shortTime } from '../figures.js';
import { assumedBurden } from './burdens.js';
import { powerCutChange } from './power-cut-words.js';
import { type ChangeKind, proposal, type Setup } from './proposal.js';
import { bearingPositions } from './rest-on-stop.js';
import { holdTimeS, isSamePlace, overFormerHolds, withRests } from './rested-holds.js';
import { cueNames, effortText, placeText } from './words.js';

/** Distance from the hinge at which the force on a latch is told. */
const latchArmM = 0.1;

/** A latch that bears the load at the pose that is held longest. */
export const holdLatch: ChangeKind = {
  id: 'hold-latch',
  family: 'latch',
  propose(setup) {
    const { study, candidate } = setup;
    if (prepareCandidate(study, candidate).model.unpoweredHold) {
      return { reason: 'the drive holds with the power off already' };
    }
    const place = longestHeldPlace(setup);
    if (place === null) return { reason: 'the loop holds no pose that a stop does not bear' };
    const isHinge = study.feature.kind === 'hinge';
    const rests = withRests(study.show, (position) => isSamePlace(study, position, place));
    const feature = { ...study.feature, latchPosition: place };
    const changed = { study: { ...study, feature, show: rests.show }, candidate };
    const inLoop = study.show.loop.filter(
      (cue) => cue.action === 'hold' && isSamePlace(study, cue.fromPosition, place),
    );
    return proposal({
      parts: ['hold-latch'],
      title: `A latch at ${placeText(place, isHinge)}`,
      actions: [
        `Let a latch bear the feature at ${placeText(place, isHinge)}, where ${cueNames(inLoop)} hold it for ${shortTime(holdTimeS(inLoop))} of every loop (${percent(1 - rests.heldFraction)} of all holding).`,
        `It must bear ${strength(setup, place)}, bounce of the carrier included, and let go under load.`,
      ],
      settings: [
        {
          field: 'feature.latch',
          value: place,
          unit: isHinge ? 'rad' : 'm',
          shown: placeText(place, isHinge),
        },
      ],
      burden: assumedBurden('hold-latch', study.feature.featureCount),
      setup: changed,
      corrected: (run) => overFormerHolds(run, rests.heldFraction, changed),
      sideEffects: (before, after) => [
        ...powerCutChange(before, after),
        'Without power a latched feature stays where it is: whoever carries it must be able to release it by hand.',
        'The drive has to take the load off the latch before it opens; what the release draws is not counted.',
      ],
    });
  },
};

/** The pose with the most hold time in the loop, stops apart; the first of equals; null when nothing is held. */
function longestHeldPlace({ study, candidate }: Setup): number | null {
  const borne = bearingPositions({ study, candidate });
  const isBorne = (position: number) => borne.some((stop) => isSamePlace(study, stop, position));
  const holds = study.show.loop.filter((cue) => cue.action === 'hold' && !isBorne(cue.fromPosition));
  const timeAtS = (cue: Cue) =>
    holdTimeS(holds.filter((other) => isSamePlace(study, other.fromPosition, cue.fromPosition)));
  let longest: Cue | null = null;
  for (const cue of holds) if (longest === null || timeAtS(cue) > timeAtS(longest)) longest = cue;
  return longest?.fromPosition ?? null;
}

/** Effort of gravity with the bounce of the carrier; on a hinge also as a force near it. */
function strength({ study, candidate }: Setup, place: number): string {
  const { model } = prepareCandidate(study, candidate);
  const { load } = model;
  const effort = Math.abs(gravityEffortAt(model.load, place)) * (1 + load.bounceFraction);
  if (!load.isHinge) return effortText(effort, false);
  return `${effortText(effort, true)}, that is ${newtons(effort / latchArmM)} at 100 mm from the hinge`;
}
