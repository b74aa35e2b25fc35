/**
 * A root of a continuous function between two points of opposite sign, by Brent's method.
 * A zero at an end is returned as it is; NaN when both ends have the same sign.
 * @param f function of one variable
 * @param low one end
 * @param high other end
 * @param tolerance absolute, in the variable
 * @param maxIterations after which the best point so far is returned
 * @returns the variable
 * @source brent, chapter 4
 */
export function findRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-12,
  maxIterations = 100,
): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) return Number.NaN;
  let c = a;
  let fc = fa;
  let step = b - a;
  let lastStep = step;
  for (let iteration = 0; iteration < maxIterations; iteration++) {
    if (fb * fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      lastStep = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const smallest = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= smallest || fb === 0) return b;
    if (Math.abs(lastStep) >= smallest && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * half * q - Math.abs(smallest * q), Math.abs(lastStep * q))) {
        lastStep = step;
        step = p / q;
      } else {
        step = half;
        lastStep = half;
      }
    } else {
      step = half;
      lastStep = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > smallest ? step : Math.sign(half) * smallest;
    fb = f(b);
  }
  return b;
}

/**
 * (e^z − 1) / z without loss of digits; 1 at 0.
 * @param z any number
 * @source cox-matthews, section 2
 */
export function expRatio1(z: number): number {
  return z === 0 ? 1 : Math.expm1(z) / z;
}

/**
 * (e^z − 1 − z) / z² without loss of digits; 1/2 at 0.
 * @param z any number
 * @source cox-matthews, section 2
 */
export function expRatio2(z: number): number {
  if (Math.abs(z) > 0.5) return (Math.expm1(z) - z) / (z * z);
  return 0.5 + z * expRatio3(z);
}

/**
 * (e^z − 1 − z − z²/2) / z³ without loss of digits; 1/6 at 0.
 * @param z any number
 * @source cox-matthews, section 2
 */
export function expRatio3(z: number): number {
  if (Math.abs(z) > 0.5) return (Math.expm1(z) - z - (z * z) / 2) / (z * z * z);
  let sum = 0;
  // Horner form of Σ zⁿ/(n + 3)!
  for (let n = 14; n > 3; n--) sum = (sum + 1) * (z / n);
  return (sum + 1) / 6;
}
