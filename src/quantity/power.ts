/**
 * A power with any exponent, of a base that is not negative.
 *
 * The language leaves the last digit of `**` to the engine, and engines changed theirs; exponential and logarithm are
 * the same in all that this program runs on, so that the same study gives the same bytes on each of them.
 */
export function power(base: number, exponent: number): number {
  return exponent === 0 ? 1 : Math.exp(exponent * Math.log(base));
}
