/**
 * Above this charge a charger holds the voltage and its current falls; on average half of it flows until full (from
 * experience with constant current, then constant voltage).
 */
const taperFrom = 0.8;
const taperFraction = 0.5;

/**
 * Time on a charger from one state of charge to full.
 * @param chargeRatePerH the pack's charge rate, 1/h
 */
export function chargeToFullS(socFraction: number, chargeRatePerH: number): number {
  const fast = Math.max(0, taperFrom - socFraction);
  const slow = 1 - Math.max(taperFrom, socFraction);
  return (3600 * (fast + slow / taperFraction)) / chargeRatePerH;
}

/** State of charge after so long on a charger; never above full. */
export function socAfterCharge(socFraction: number, timeS: number, chargeRatePerH: number): number {
  const perS = chargeRatePerH / 3600;
  const fastS = Math.max(0, taperFrom - socFraction) / perS;
  if (timeS <= fastS) return socFraction + timeS * perS;
  const from = Math.max(taperFrom, socFraction);
  return Math.min(1, from + (timeS - fastS) * perS * taperFraction);
}
