/**
 * Root mean square of an effort over a duty cycle; 0 for a cycle without duration.
 * @param efforts N·m or N, constant within each piece
 * @param durationsS one per piece, at least 0
 */
export function dutyRmsEffort(efforts: ArrayLike<number>, durationsS: ArrayLike<number>): number {
  let squares = 0;
  let totalS = 0;
  for (let i = 0; i < durationsS.length; i++) {
    squares += efforts[i]! * efforts[i]! * durationsS[i]!;
    totalS += durationsS[i]!;
  }
  return totalS > 0 ? Math.sqrt(squares / totalS) : 0;
}
