import { inverseNormalShare } from '../../quantity/normal.js';

const largestIterations = 60;

/**
 * Share of a sum of squares of independent standard normal numbers that lies below x.
 * Summed as a series of positive terms; good to about 12 digits for up to some hundred squares.
 * @param x at least 0
 * @param degreeCount how many squares, 1 or more
 * @source abramowitz-stegun, 26.4.6
 */
export function chiSquareShare(x: number, degreeCount: number): number {
  if (!(x > 0)) return 0;
  let term = 1;
  let sum = 1;
  for (let k = degreeCount + 2; term > 1e-17 * sum; k += 2) {
    term *= x / k;
    sum += term;
  }
  return Math.exp(logDensity(x, degreeCount)) * ((2 * x) / degreeCount) * sum;
}

/**
 * The x below which a share of such sums lies: `chiSquarePoint(0.99, n)` is exceeded by one in a hundred.
 * Starts from the cube-root rule and is refined on the exact share.
 * @param share strictly between 0 and 1
 * @param degreeCount how many squares, 1 or more
 * @source wilson-hilferty (from memory), for the start
 */
export function chiSquarePoint(share: number, degreeCount: number): number {
  const ninth = 2 / (9 * degreeCount);
  const root = Math.max(0.01, 1 - ninth + inverseNormalShare(share) * Math.sqrt(ninth));
  let x = degreeCount * root * root * root;
  for (let i = 0; i < largestIterations; i++) {
    const step = (chiSquareShare(x, degreeCount) - share) / Math.exp(logDensity(x, degreeCount));
    const next = Math.max(x / 8, x - step);
    if (Math.abs(next - x) <= 1e-13 * x) return next;
    x = next;
  }
  return x;
}

/** Logarithm of the density. */
function logDensity(x: number, degreeCount: number): number {
  const half = degreeCount / 2;
  return (half - 1) * Math.log(x) - x / 2 - half * Math.LN2 - logGamma(degreeCount);
}

/** Logarithm of Γ(n/2) for whole n, by Γ(z + 1) = z·Γ(z) from Γ(½) = √π or Γ(1) = 1. */
function logGamma(degreeCount: number): number {
  let sum = degreeCount % 2 === 1 ? Math.log(Math.PI) / 2 : 0;
  for (let z = degreeCount % 2 === 1 ? 0.5 : 1; z < degreeCount / 2; z++) sum += Math.log(z);
  return sum;
}
