/** Mean of a series. */
export function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Mean square of the distance from the mean. */
export function varianceOf(values: Float64Array): number {
  const mean = meanOf(values);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
}

/** Linear correlation of two series of the same length. */
export function correlation(a: Float64Array, b: Float64Array): number {
  const [meanA, meanB] = [meanOf(a), meanOf(b)];
  const shared = a.reduce((sum, value, i) => sum + (value - meanA) * (b[i]! - meanB), 0) / a.length;
  return shared / Math.sqrt(varianceOf(a) * varianceOf(b));
}
