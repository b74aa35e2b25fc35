import type { Standing } from './own-weights.js';

/** Two candidates of which either beats the other in at least so many of the draws are tied. */
const leastToLose = 0.35;

/**
 * Whether two candidates are tied: neither beats the other clearly more often than not.
 * @param beatFraction share of draws in which one beats the other
 */
export function isTie(beatFraction: number): boolean {
  return beatFraction >= leastToLose && beatFraction <= 1 - leastToLose;
}

/**
 * Places in a ranking that says a tie where there is one: a candidate shares the place of the one before it when it
 * is tied with every candidate of that place. `1, 1, 3` for two at the top.
 * @param order indices of the candidates, best first
 * @param standings one per candidate
 * @returns one place per entry of the order, from 1
 */
export function placesWithTies(order: readonly number[], standings: readonly Standing[]): number[] {
  const places: number[] = [];
  let first = 0;
  order.forEach((candidate, position) => {
    const together = order.slice(first, position);
    const tied = together.every((other) => isTie(standings[other]!.beatFractions[candidate]!));
    if (!tied) first = position;
    places.push(first + 1);
  });
  return places;
}
