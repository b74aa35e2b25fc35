/** Share of the draws at each end of an input that are compared with each other. */
const endShare = 0.1;

/** Standard errors from which a difference is no chance. */
const surelyErrors = 3.5;

/** The draws in which an input is lowest and highest. */
export interface InputEnds {
  /** Its values, rising. */
  sorted: Float64Array;
  low: Int32Array;
  high: Int32Array;
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
  const draws = Int32Array.from(values.keys());
  return {
    sorted,
    low: draws.filter((draw) => values[draw]! <= lowValue),
    high: draws.filter((draw) => values[draw]! >= highValue),
    lowValue,
    highValue,
  };
}

/** Mean of a figure over some draws. */
export function meanOver(draws: Int32Array, figure: (draw: number) => number): number {
  let sum = 0;
  for (const draw of draws) sum += figure(draw);
  return sum / Math.max(1, draws.length);
}

/** Mean of a figure at the high end less that at the low one; 0 where chance alone brings that about now and then. */
export function swingBetween({ low, high }: InputEnds, figure: (draw: number) => number): number {
  const swing = meanOver(high, figure) - meanOver(low, figure);
  const error = Math.sqrt(varianceOfMean(low, figure) + varianceOfMean(high, figure));
  return Math.abs(swing) > surelyErrors * error ? swing : 0;
}

function varianceOfMean(draws: Int32Array, figure: (draw: number) => number): number {
  const middle = meanOver(draws, figure);
  return meanOver(draws, (draw) => (figure(draw) - middle) ** 2) / Math.max(1, draws.length);
}
