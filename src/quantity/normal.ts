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
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
  67265.7709270087, 33430.57558358813, 2509.0809287301227,
];
const middleBelow = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
  28729.085735721943, 5226.495278852854,
];
const tailAbove = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
];
const tailBelow = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
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
