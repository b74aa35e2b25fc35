/** An affine map: (x, y) → (a·x + c·y + e, b·x + d·y + f). */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** First `inner`, then `outer`. */
export function compose(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** The point that a point is taken to. */
export function apply([a, b, c, d, e, f]: Matrix, x: number, y: number): [x: number, y: number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** Mean factor by which lengths grow; for line widths and dashes. */
export function scaleOf([a, b, c, d]: Matrix): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}
