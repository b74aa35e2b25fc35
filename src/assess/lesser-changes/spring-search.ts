import type { AssistSpring } from '../../study/feature.js';
import type { SpringBench } from './spring-bench.js';

/** A family of springs over the unit square. */
export interface SpringFamily {
  springAt(firstFraction: number, secondFraction: number): AssistSpring;
  /** Points of the first grid along both sides; 1 along a side that does not matter. */
  firstCount: number;
  secondCount: number;
}

/** A spring and the draw of the drives with it. */
export interface FoundSpring {
  spring: AssistSpring;
  drawW: number;
}

/** Each further grid is five points wide and so much smaller than the one before. */
const zoomPoints = 5;
const zoomRounds = 4;
const zoomFactor = 0.4;

/**
 * The spring of a family with the least draw among those that are allowed: a grid over the whole family, then
 * finer ones round the best. Draw and limits are convex in the strength of a spring, so this does not get lost.
 * @returns null when none is allowed
 */
export function bestSpring(bench: SpringBench, family: SpringFamily): FoundSpring | null {
  let best: (FoundSpring & { at: [number, number] }) | null = null;
  const look = (first: number, second: number): void => {
    if (first < 0 || first > 1 || second < 0 || second > 1) return;
    const spring = family.springAt(first, second);
    if (!bench.allows(spring)) return;
    const drawW = bench.drawW(spring);
    if (best === null || drawW < best.drawW) best = { spring, drawW, at: [first, second] };
  };
  const grid = (middle: [number, number], half: [number, number], counts: [number, number]): void => {
    for (let i = 0; i < counts[0]; i++)
      for (let j = 0; j < counts[1]; j++)
        look(along(middle[0], half[0], i, counts[0]), along(middle[1], half[1], j, counts[1]));
  };
  const { firstCount, secondCount } = family;
  grid([0.5, 0.5], [0.5, 0.5], [firstCount, secondCount]);
  let half: [number, number] = [1 / firstCount, 1 / secondCount];
  const zoomCounts: [number, number] = [zoomPoints, secondCount > 1 ? zoomPoints : 1];
  for (let round = 0; round < zoomRounds; round++) {
    const found = best as (FoundSpring & { at: [number, number] }) | null;
    if (found === null) return null;
    grid(found.at, half, zoomCounts);
    half = [half[0] * zoomFactor, half[1] * zoomFactor];
  }
  return best;
}

/** Point `i` of so many, evenly over an interval; its middle when there is one only. */
function along(middle: number, half: number, i: number, count: number): number {
  return count > 1 ? middle - half + (2 * half * i) / (count - 1) : middle;
}
