/**
 * Share of a standard normal distribution below x; 0 below −8 and 1 above 8.
 * Summed as a power series until it stands still, exact to about 15 digits within ±4.
 *
 * @source abramowitz-stegun, Handbook of Mathematical Functions, 26.2.11
 */
export function normalShare(x: number): number {
  if (x < -8) return 0;
  if (x > 8) return 1;
  let sum = x;
  let term = x;
  for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum) && k < 400; k += 2) {
    term *= (x * x) / k;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
}

// Rational approximations near the middle and in the tails, lowest power first.
const middleAbove = [
  3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125,
  45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
];
const middleBelow = [
  1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867,
  39307.89580009271061, 28729.085735721942674, 5226.495278852854561,
];
const tailAbove = [
  1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
  1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 0.0007745450142783414076,
];
const tailBelow = [
  1, 2.05319162663775882187, 1.6763848301838038494, 0.6897673349851000455, 0.14810397642748007459,
  0.0151986665636164571966, 0.000547593808499534494600, 1.05075007164441684324e-9,
];

/**
 * The x below which the share p of a standard normal distribution lies; p is held within 1e-10 of 0 and 1.
 *
 * @source wichura-1988, Algorithm AS 241, Applied Statistics 37(3):477–484
 */
export function inverseNormalShare(p: number): number {
  const share = Math.min(1 - 1e-10, Math.max(1e-10, p));
  const fromMiddle = share - 0.5;
  if (Math.abs(fromMiddle) <= 0.425) {
    const r = 0.180625 - fromMiddle * fromMiddle;
    return (fromMiddle * polynomial(middleAbove, r)) / polynomial(middleBelow, r);
  }
  const r = Math.sqrt(-Math.log(fromMiddle < 0 ? share : 1 - share)) - 1.6;
  const x = polynomial(tailAbove, r) / polynomial(tailBelow, r);
  return fromMiddle < 0 ? -x : x;
}

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * x + coefficients[k]!;
  return sum;
}
