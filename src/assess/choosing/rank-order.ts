/** What decides the place of a candidate. */
export interface Placed {
  id: string;
  /** null: passes what could be judged, something could not. */
  passes: boolean | null;
  score: number;
}

/** Passing first, then what could not be judged, then what fails. */
const order = (passes: boolean | null): number => (passes === true ? 0 : passes === null ? 1 : 2);

/** Order of two candidates: by their limits, then by score, then by id so that the order never wavers. */
export function compareForRank(a: Placed, b: Placed): number {
  return order(a.passes) - order(b.passes) || b.score - a.score || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** False when a limit fails, null when none fails but one could not be judged. */
export function passesAll(limits: readonly { passes: boolean | null }[]): boolean | null {
  if (limits.some((limit) => limit.passes === false)) return false;
  return limits.some((limit) => limit.passes === null) ? null : true;
}

/** Weighted sum over the sum of weights, 0…1; 0 when nothing carries a weight. (M22) */
export function scoreOf(outcomes: readonly { weightScore: number; worthScore: number }[]): number {
  const weights = outcomes.reduce((sum, outcome) => sum + outcome.weightScore, 0);
  const worth = outcomes.reduce((sum, outcome) => sum + outcome.weightScore * outcome.worthScore, 0);
  return weights > 0 ? worth / weights : 0;
}
