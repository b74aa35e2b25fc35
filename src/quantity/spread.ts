/**
 * How poorly a value is known. All numbers in SI, in the dimension of the value.
 * `uniform` and `triangular` are taken in the logarithm when high/low ≥ 3 and low > 0.
 * `normal`: `halfWidth` is that of a 95 % interval; draws are cut at 3 σ and at physical bounds.
 */
export type Spread =
  | { shape: 'exact' }
  | { shape: 'uniform'; low: number; high: number }
  | { shape: 'triangular'; low: number; mode: number; high: number }
  | { shape: 'normal'; halfWidth: number };

/** Standard deviations in the half width of the 95 % interval that `±` states. */
export const sigmasInHalfWidth = 1.96;

/** A value as read or assumed: the nominal figure in SI and how poorly it is known. */
export interface SpreadValue {
  nominal: number;
  /** null: nothing was said about the spread; the default by origin of the figures applies. */
  spread: Spread | null;
}
