import { pulseBlend } from '../../physics/pulse-drive.js';

/*
 * The blend between slow and fast pulses costs three exponentials, and an ensemble asks for it a million times. It is
 * tabulated over duty and pulse ratio: even in the square root of the duty, because it bends most near duty 0,
 * and even in the logarithm of the ratio.
 */

/** Points over the square root of the duty, 0…1. */
export const blendPointCount = 129;

const ratioCount = 113;
const lowestRatio = 0.01;
const highestRatio = 2000;
const logStep = Math.log(highestRatio / lowestRatio) / (ratioCount - 1);

const table = new Float64Array(ratioCount * blendPointCount);
const isFilled = new Uint8Array(ratioCount);

/** Rows are filled as they are asked for: a study has few pulse ratios. */
function fill(row: number): void {
  if (isFilled[row] === 1) return;
  const ratio = lowestRatio * Math.exp(row * logStep);
  for (let point = 0; point < blendPointCount; point++) {
    const root = point / (blendPointCount - 1);
    table[row * blendPointCount + point] = pulseBlend(root * root, ratio);
  }
  isFilled[row] = 1;
}

/** Write the blend at one pulse ratio, over the root of the duty, into `row` (length `blendPointCount`). */
export function blendRow(pulseRatio: number, row: Float64Array): void {
  const at = Math.log(Math.min(highestRatio, Math.max(lowestRatio, pulseRatio)) / lowestRatio) / logStep;
  const lower = Math.min(ratioCount - 2, Math.floor(at));
  fill(lower);
  fill(lower + 1);
  const share = at - lower;
  const from = lower * blendPointCount;
  for (let point = 0; point < blendPointCount; point++) {
    const low = table[from + point]!;
    row[point] = low + share * (table[from + blendPointCount + point]! - low);
  }
}

/** The blend at a duty, from a row of the table; duties beyond 1 count as 1. */
export function blendAt(row: Float64Array, duty: number): number {
  if (duty >= 1) return row[blendPointCount - 1]!;
  const at = Math.sqrt(duty) * (blendPointCount - 1);
  const lower = at | 0;
  const low = row[lower]!;
  return low + (at - lower) * (row[lower + 1]! - low);
}
