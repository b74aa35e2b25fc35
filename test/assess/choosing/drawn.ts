import type { DrawnWorths } from '../../../src/assess/choosing/drawn-worths.js';

/**
 * Candidates with the same worths in every draw.
 * @param worths per candidate one worth per criterion
 * @param tiers per candidate; all pass when left out
 */
export function fixed(worths: number[][], drawCount = 1, tiers: number[] = worths.map(() => 0)): DrawnWorths {
  return {
    drawCount,
    criterionCount: worths[0]!.length,
    worths: worths.map((own) =>
      Float64Array.from({ length: drawCount * own.length }, (_, i) => own[i % own.length]!),
    ),
    tiers: tiers.map((tier) => new Uint8Array(drawCount).fill(tier)),
  };
}

/**
 * One criterion, one worth per candidate and draw.
 * @param worths per candidate
 * @param tiers per candidate and draw; all pass when left out
 */
export function single(
  worths: number[][],
  tiers: number[][] = worths.map((own) => own.map(() => 0)),
): DrawnWorths {
  return {
    drawCount: worths[0]!.length,
    criterionCount: 1,
    worths: worths.map((own) => Float64Array.from(own)),
    tiers: tiers.map((own) => Uint8Array.from(own)),
  };
}
