/** Two candidates of which either beats the other in at least so many of the draws are tied. */
const leastToLose = 0.35;

/**
 * Whether two candidates are tied: neither beats the other clearly more often than not.
 * @param beatFraction share of draws in which one beats the other
 */
export function isTie(beatFraction: number): boolean {
  return beatFraction >= leastToLose && beatFraction <= 1 - leastToLose;
}
