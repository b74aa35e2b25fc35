import type { MotionLaw } from '../physics/motion-law.js';
import {
  assumed,
  choice,
  type FieldDeclaration,
  longestLabel,
  quantity,
  required,
  text,
  yesNo,
} from '../quantity/field.js';
import type { FeatureKind } from './feature.js';
import { positionDimension, positionUnit } from './feature-fields.js';

const note = text('note', 'note', { meaning: 'anything worth keeping', how: 'free text' });

/** Motion laws as written in show.csv; the record makes the compiler name a law that is missing. */
const lawNames = {
  trapezoid: true,
  cycloidal: true,
  harmonic: true,
  'modified-sine': true,
  'poly-345': true,
  'poly-4567': true,
} satisfies Record<MotionLaw, true>;

/** Columns of show.csv; positions in degrees on a hinge, millimetres on a slide. */
export function showFields(kind: FeatureKind): readonly FieldDeclaration[] {
  return cueFields[kind];
}

function cueFieldsOf(kind: FeatureKind): FieldDeclaration[] {
  return [
    text('cue', 'name', {
      longest: longestLabel,
      meaning: 'name of the cue',
      how: 'what it is called when you rehearse',
    }),
    required(
      choice('action', 'action', ['move', 'hold', 'rest', 'loop'], {
        meaning:
          'move to a position, hold it, rest on a stop or latch; loop marks where the repeated part begins',
        how: 'write the show down cue by cue',
      }),
    ),
    quantity('to', 'toPosition', positionDimension(kind), {
      meaning: 'position at the end of a move',
      how:
        kind === 'hinge'
          ? 'a telephone’s inclinometer on the feature in that pose; 0 is level, up is positive'
          : 'a tape measure from the zero of the rail',
      habitual: positionUnit(kind),
      within: kind === 'hinge' ? '-360..360 deg' : '-100000..100000 mm',
    }),
    quantity('seconds', 'durationS', 'time', {
      meaning: 'how long the cue lasts',
      how: 'a stopwatch at rehearsal',
      habitual: 's',
      plausible: '0.05..7200 s',
      within: '0.001..1000000 s',
    }),
    assumed(
      choice('law', 'law', Object.keys(lawNames), {
        meaning: 'how the motion swells and fades',
        how: 'what the controller does; switched drives ignore it',
      }),
      'poly-345',
      'a smooth start and stop',
    ),
    assumed(
      quantity('lights', 'lightsFraction', 'ratio', {
        meaning: 'light level during the cue',
        how: 'the setting of the dimmer',
        habitual: '%',
        within: '0..1',
      }),
      '100 %',
      'full lights, the most cautious reading',
    ),
    note,
  ];
}

const cueFields: Record<FeatureKind, readonly FieldDeclaration[]> = {
  hinge: cueFieldsOf('hinge'),
  slide: cueFieldsOf('slide'),
};

/** Columns of day.csv. */
export const dayFields: readonly FieldDeclaration[] = [
  required(
    text('block', 'block', {
      longest: longestLabel,
      meaning: 'name of the part of the day',
      how: 'from the running order',
    }),
  ),
  required(
    quantity('minutes', 'durationS', 'time', {
      meaning: 'how long it lasts',
      how: 'from the running order',
      habitual: 'min',
      plausible: '0.5..1440 min',
      within: '0.01..100000 min',
    }),
  ),
  required(
    choice('activity', 'activity', ['show', 'still', 'off'], {
      meaning: 'show: the cue list loops; still: powered and resting; off: switched off',
      how: 'from the running order',
    }),
  ),
  assumed(
    yesNo('swap_allowed', 'swapAllowed', { meaning: 'whether a pack can be swapped then', how: 'decide it' }),
    'no',
    'the most cautious reading',
  ),
  assumed(
    yesNo('charger', 'charger', { meaning: 'whether a charger is at hand then', how: 'ask the organiser' }),
    'no',
    'the most cautious reading',
  ),
  note,
];
