import type { InputFlip } from '../certainty.js';
import { flipValue } from '../sensitivity/flip-value.js';
import { type InputRange, shareBeyond } from './input-range.js';
import type { WhatIf } from './what-if.js';

/** Shares of the way from the nominal figure to either end at which a change of leader is looked for at first. */
const scanned = [0.5, 1];

/** Most flips that are kept, the likeliest first. */
const kept = 5;

/** A flip that the full simulation does not show at once is looked for so much further on, as a share of the way. */
const furtherShares = [0, 0.03];

/**
 * Which of two candidates comes first when both are computed again in full with one input at a value; null where the
 * path cannot be changed in the study.
 */
export type Rerun = (
  path: string,
  value: number,
  pair: [leader: string, challenger: string],
) => string | null;

/**
 * The value of each input nearest to its nominal figure at which another candidate comes first, others nominal; found
 * on quick simulations, confirmed by a whole one.
 * @param all with every candidate that may come first
 * @param ids of those candidates
 * @param leader who comes first now
 * @param rerun a flip that it does not confirm is left out
 */
export function inputFlips(
  ranges: readonly InputRange[],
  all: WhatIf,
  ids: readonly string[],
  leader: string,
  rerun: Rerun,
): InputFlip[] {
  const place = ids.indexOf(leader);
  const leadAt = (index: number, value: number) => leadOf(all.at(index, value).places, place);
  if (!(leadOf(all.nominally().places, place) > 0)) return [];
  const found = ranges.flatMap((range): InputFlip[] => {
    const index = all.indexOf(range.path);
    if (index < 0 || !changesSomewhere(range, (value) => leadAt(index, value))) return [];
    const flip = flipValue((value) => leadAt(index, value), range.nominal, range);
    if (flip === null || !flip.confirmed) return [];
    return [flipOf(range, flip.value, ids[firstOf(all.at(index, flip.value).places)]!)];
  });
  found.sort((a, b) => b.beyondProbability - a.beyondProbability || (a.path < b.path ? -1 : 1));
  const confirmed: InputFlip[] = [];
  for (const flip of found) {
    if (confirmed.length === kept) break;
    const range = ranges.find(({ path }) => path === flip.path)!;
    const sure = confirm(flip, range, leader, rerun);
    if (sure !== null) confirmed.push(sure);
  }
  return confirmed;
}

/** How far a candidate is ahead of the best of the others. */
function leadOf(places: Float64Array, place: number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < places.length; index++) {
    if (index !== place && places[index]! > best) best = places[index]!;
  }
  return places[place]! - best;
}

function firstOf(places: Float64Array): number {
  let first = 0;
  for (let index = 1; index < places.length; index++) if (places[index]! > places[first]!) first = index;
  return first;
}

function changesSomewhere({ nominal, low, high }: InputRange, lead: (value: number) => number): boolean {
  return [low, high].some((end) => scanned.some((share) => lead(nominal + share * (end - nominal)) < 0));
}

function flipOf(range: InputRange, value: number, leaderBeyond: string): InputFlip {
  const { path, field, owner, label, nominal, show } = range;
  return {
    path,
    field,
    owner,
    label,
    value,
    shown: show(value),
    nominal,
    nominalShown: show(nominal),
    leaderBeyond,
    beyondProbability: shareBeyond(range, value),
  };
}

/** The flip as a whole simulation shows it; null when it does not. */
function confirm(flip: InputFlip, range: InputRange, leader: string, rerun: Rerun): InputFlip | null {
  const end = flip.value > range.nominal ? range.high : range.low;
  for (const further of furtherShares) {
    const value = flip.value + further * (end - range.nominal);
    const leads = rerun(flip.path, value, [leader, flip.leaderBeyond]);
    if (leads === null) return null;
    if (leads !== leader) return flipOf(range, value, leads);
  }
  return null;
}
