import { sigmasInHalfWidth } from '../../quantity/spread.js';
import type { InputSwing } from '../certainty.js';
import type { SwungInput } from '../sensitivity/swings.js';
import { swings } from '../sensitivity/swings.js';
import type { InputRange } from './input-range.js';
import type { WhatIf } from './what-if.js';

/** Smaller swings of the lead do not show. */
const visibleSwing = 0.0005;

/** Most swings that are kept. */
const kept = 24;

/** Standard deviations between the 10 % and the 90 % point of a normal spread. */
const tenToNinetySigmas = 2 * 1.2815515655446004;
/**
 * What each input's 10–90 % range does to the lead of the first candidate over the second, scores counted where all
 * limits hold; the largest first.
 * @param pair the two candidates; inputs that neither sees are left out
 */
export function inputSwings(ranges: readonly InputRange[], pair: WhatIf): InputSwing[] {
  const seen = ranges.filter(({ path }) => pair.indexOf(path) >= 0);
  const lead = (index: number, value: number) => {
    const { utilities } = pair.at(pair.indexOf(seen[index]!.path), value);
    return utilities[0]! - (utilities[1] ?? 0);
  };
  return swings(seen.map(asBelieved), lead)
    .filter(({ swing }) => swing >= visibleSwing)
    .slice(0, kept)
    .map(({ path, low, high, outputs }) => {
      const range = seen.find((entry) => entry.path === path)!;
      const { field, owner, label, show } = range;
      const shown = { lowShown: show(low), highShown: show(high) };
      return { path, field, owner, label, ...shown, leadAtLow: outputs.low, leadAtHigh: outputs.high };
    });
}

/** A spread with the 10 % and 90 % points of the draws, which measurements may have moved. */
function asBelieved({ path, p10, p90 }: InputRange): SwungInput {
  const halfWidth = (sigmasInHalfWidth * (p90 - p10)) / tenToNinetySigmas;
  return { path, nominal: (p10 + p90) / 2, spread: { shape: 'normal', halfWidth }, bounds: null };
}
