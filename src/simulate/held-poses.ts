import type { Cue, Show } from '../study/show.js';
import type { Study } from '../study/study.js';

/** All cues as a person reads them: those played once, then the loop. */
const allCues = ({ leadIn, loop }: Show): Cue[] => [...leadIn, ...loop];

/** The first hold cue as a person reads the list, at which endless heat and push are asked for; null without any. */
export const firstHoldPosition = (show: Show): number | null =>
  allCues(show).find(({ action }) => action === 'hold')?.fromPosition ?? null;

/**
 * Every position that a show holds, each once, highest first: any of them can be the one at which the power goes.
 * @param highestCue stands in where nothing is held: the worst place to lose power
 */
export function heldPositions(show: Show, highestCue: number): number[] {
  const held = allCues(show).filter(({ action }) => action === 'hold');
  if (held.length === 0) return [highestCue];
  return [...new Set(held.map(({ fromPosition }) => fromPosition))].sort((a, b) => b - a);
}

/** Positions at which a show rests with nothing but a stop to bear the feature: those at the latch left out. */
export function restPositions({ show, feature }: Study): number[] {
  const { latchPosition, kind } = feature;
  const isLatched = (position: number) =>
    latchPosition !== null && Math.abs(position - latchPosition) <= samePlace[kind];
  const rests = allCues(show).filter(({ action }) => action === 'rest');
  return [...new Set(rests.map(({ fromPosition }) => fromPosition))].filter((place) => !isLatched(place));
}

/** Positions closer than this are the same place: a tenth of a degree, a tenth of a millimetre. */
export const samePlace = { hinge: Math.PI / 1800, slide: 1e-4 };
