import { Sfc32 } from './sfc32.js';

/**
 * One column of a Latin hypercube: each of as many equal strata as there are draws is met exactly once, at a random
 * place inside it and in random order.
 * @param seed whole number
 * @param name of the column; columns of other names are independent of it
 * @param drawCount length of the column
 * @returns shares strictly between 0 and 1, one per draw
 * @source mckay, section 2.3
 */
export function latinColumn(seed: number, name: string, drawCount: number): Float64Array {
  const random = new Sfc32(seed, `latin hypercube ${name}`);
  const column = new Float64Array(drawCount);
  // Away from the ends by a hair, so that rounding never lifts a share into the next stratum.
  for (let i = 0; i < drawCount; i++) column[i] = (i + 1e-9 + (1 - 2e-9) * random.next()) / drawCount;
  random.shuffle(column);
  return column;
}
