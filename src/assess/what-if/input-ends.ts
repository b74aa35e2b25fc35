import { mean, variance } from 'simple-statistics';

/** Share of the draws at each end of an input that are compared with each other. */
const endShare = 0.1;

/** Standard errors from which a difference is no chance. */
const surelyErrors = 3.5;

/** The draws in which an input is lowest and highest. */
export interface InputEnds {
  /** Its values, rising. */
  sorted: Float64Array;
  low: number[];
  high: number[];
  /** Largest value of the low end, smallest of the high one. */
  lowValue: number;
  highValue: number;
}

/** The lowest and the highest tenth of the draws of an input; equal values at the edge belong to both. */
export function inputEnds(values: Float64Array): InputEnds {
  const sorted = values.slice().sort();
  const count = Math.max(1, Math.round(endShare * sorted.length));
  const lowValue = sorted[count - 1]!;
  const highValue = sorted[sorted.length - count]!;
  const low: number[] = [];
  const high: number[] = [];
  for (let draw = 0; draw < values.length; draw++) {
    if (values[draw]! <= lowValue) low.push(draw);
    if (values[draw]! >= highValue) high.push(draw);
  }
  return { sorted, low, high, lowValue, highValue };
}

/** Mean of a figure over some draws, at least one. */
export function meanOver(draws: readonly number[], figure: (draw: number) => number): number {
  return mean(draws.map(figure));
}

/** Mean of a figure at the high end less that at the low one; 0 where chance alone brings that about now and then. */
export function swingBetween({ low, high }: InputEnds, figure: (draw: number) => number): number {
  const atLow = low.map(figure);
  const atHigh = high.map(figure);
  const swing = mean(atHigh) - mean(atLow);
  const error = Math.sqrt(variance(atLow) / atLow.length + variance(atHigh) / atHigh.length);
  return Math.abs(swing) > surelyErrors * error ? swing : 0;
}
