import { staticEffort } from '../../physics/load.js';
import { prepareCandidate } from '../../simulate/candidate.js';
import type { Candidate } from '../../study/study.js';
import { shortTime } from '../figures.js';
import { assumedBurden } from './burdens.js';
import type { ChangeSetting } from './lesser-change.js';
import { powerCutChange } from './power-cut-words.js';
import { type ChangeKind, proposal, type Setup } from './proposal.js';
import { isSamePlace, overFormerHolds, type RestedShow, withRests } from './rested-holds.js';
import { cueName, cueNames, placeText } from './words.js';

/** Power off wherever a stop or a latch bears the load. */
export const restOnStop: ChangeKind = {
  id: 'rest-on-stop',
  family: 'rest',
  propose(setup) {
    const { study, candidate } = setup;
    const bearing = bearingPositions(setup);
    const rests = withRests(study.show, (position) =>
      bearing.some((place) => isSamePlace(study, place, position)),
    );
    const idles = candidate.sheet.poweredAtRest && candidate.sheet.idleCurrentA > 0;
    const restsAnyway = study.show.loop.some(({ action }) => action === 'rest');
    if (rests.rested.length === 0 && !(idles && restsAnyway)) {
      return { reason: 'no cue holds on a stop, and the power is off already where the feature rests' };
    }
    const off: Candidate = { ...candidate, sheet: { ...candidate.sheet, poweredAtRest: false } };
    const changed = { study: { ...study, show: rests.show }, candidate: off };
    return proposal({
      parts: ['rest-on-stop'],
      title: 'Power off where a stop bears the feature',
      actions: actionsOf(setup, rests, idles),
      settings: settingsOf(rests, idles),
      burden: assumedBurden('rest-on-stop', study.feature.featureCount),
      setup: changed,
      corrected: (run) => overFormerHolds(run, rests.heldFraction, changed),
      sideEffects: (before, after) => [
        ...powerCutChange(before, after),
        'While it rests a hand can lift it; the drive must find it where it left it when the power comes back.',
        ...restart(before.run.nominal.startUpCurrentA),
      ],
    });
  },
};

/** Stops the feature lies on by itself, and the latch. */
export function bearingPositions({ study, candidate }: Setup): number[] {
  const { lowerStopPosition, upperStopPosition, latchPosition } = study.feature;
  const { model } = prepareCandidate(study, candidate);
  const places = latchPosition === null ? [] : [latchPosition];
  if (staticEffort(model.load, lowerStopPosition) >= 0) places.push(lowerStopPosition);
  if (staticEffort(model.load, upperStopPosition) <= 0) places.push(upperStopPosition);
  return places;
}

function actionsOf({ study }: Setup, { rested }: RestedShow, idles: boolean): string[] {
  const isHinge = study.feature.kind === 'hinge';
  const actions: string[] = [];
  if (rested.length > 0) {
    const places = new Set(rested.map(({ fromPosition }) => placeText(fromPosition, isHinge)));
    const names = cueNames(rested);
    actions.push(`Write ${names} as rest in the cue list: the stop at ${[...places].join(', ')} bears it.`);
  }
  if (idles)
    actions.push('Cut the drive’s supply with a switch that the controller works while the feature rests.');
  const restS = study.show.loop.reduce((sum, cue) => sum + (cue.action === 'rest' ? cue.durationS : 0), 0);
  if (idles && rested.length === 0) actions.push(`The loop rests for ${shortTime(restS)} each time.`);
  return actions;
}

function settingsOf({ rested }: RestedShow, idles: boolean): ChangeSetting[] {
  const word = (field: string, value: string): ChangeSetting => ({ field, value, unit: '', shown: value });
  return [
    ...rested.map((cue) => word(`action of ${cueName(cue)}`, 'rest')),
    ...(idles ? [word('powered_at_rest', 'no')] : []),
  ];
}

function restart(startUpA: number | null): string[] {
  return startUpA === null
    ? []
    : ['Every wake-up from a rest draws the start-up current again; fuse and board must bear it.'];
}
