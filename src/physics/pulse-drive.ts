/**
 * Pulsed full voltage on a motor with slow-decay freewheel.
 * `pulseRatio` p = 1 / (pulse frequency × electrical time constant): small for fast pulses.
 */

/** Below this the blend is taken from its series: the closed form would subtract nearly equal numbers. */
const seriesBelow = 0.1;

/** (1 − e^(−x)) / x, 1 at 0. */
function decayMean(x: number): number {
  return x === 0 ? 1 : -Math.expm1(-x) / x;
}

/**
 * Where the pack current of a held motor lies between fast pulses (0: duty²) and slow pulses (1: duty).
 * 0 at duty 0 and at full duty, where nothing is switched.
 * With a = D·p and b = (1 − D)·p it is 1 − m(a)·m(b)/m(p), m the mean of a decay: no cancellation
 * for large p, and a series of ln for small p.
 * @param dutyFraction D, 0…1
 * @param pulseRatio p, from 0 to Infinity
 * @returns 0…1
 * @source mohan, chapter 7, step-down converter with a resistive-inductive load, re-derived (M15)
 */
export function pulseBlend(dutyFraction: number, pulseRatio: number): number {
  if (dutyFraction <= 0 || dutyFraction >= 1 || pulseRatio <= 0) return 0;
  if (pulseRatio === Number.POSITIVE_INFINITY) return 1;
  if (pulseRatio < seriesBelow) {
    const s = dutyFraction * (1 - dutyFraction);
    const q = (pulseRatio * pulseRatio) / 4;
    // ln(sinh x / x) = x²/6 − x⁴/180 + x⁶/2835 − …, at x = a/2, b/2 and p/2
    const logarithm = q * s * (-1 / 3 + q * ((4 - 2 * s) / 180 - (q * (6 - s * (9 - 2 * s))) / 2835));
    return -Math.expm1(logarithm);
  }
  const on = decayMean(dutyFraction * pulseRatio);
  const off = decayMean((1 - dutyFraction) * pulseRatio);
  return 1 - (on * off) / decayMean(pulseRatio);
}

/**
 * Mean pack current of a held motor in units of voltage / resistance.
 * duty² for fast pulses, duty for slow ones.
 * @param dutyFraction D, 0…1
 * @param pulseRatio p, from 0 to Infinity
 * @returns 0…1
 * @source mohan, chapter 7, step-down converter with a resistive-inductive load, re-derived (M14)
 */
export function pulseBusCurrentRatio(dutyFraction: number, pulseRatio: number): number {
  const square = dutyFraction * dutyFraction;
  return square + pulseBlend(dutyFraction, pulseRatio) * (dutyFraction - square);
}

/**
 * Mean pack current of a motor that is held by pulses; 0 for no current.
 * A current beyond what the voltage can drive counts as full duty.
 * @param currentA mean motor current, either sign
 * @param resistanceOhm of the winding at its temperature
 * @param voltageV of the pulses
 * @param pulseRatio p, from 0 to Infinity
 * @returns A, at least 0
 * @source mohan, chapter 7, re-derived (M14)
 */
export function pulseHoldBusCurrentA(
  currentA: number,
  resistanceOhm: number,
  voltageV: number,
  pulseRatio: number,
): number {
  const dutyFraction = Math.min(1, (Math.abs(currentA) * resistanceOhm) / voltageV);
  return (voltageV / resistanceOhm) * pulseBusCurrentRatio(dutyFraction, pulseRatio);
}

/**
 * Pack current of a motor in motion that draws power (motoring or plugging).
 * @param currentA motor current, either sign
 * @param motorVoltageV across the motor, either sign
 * @param busVoltageV of the pulses
 * @param blend from `pulseBlend` at the duty that would hold this current
 * @returns A, at least 0
 * @source mohan, chapter 7, blended between its two limits (M15)
 */
export function pulseMovingBusCurrentA(
  currentA: number,
  motorVoltageV: number,
  busVoltageV: number,
  blend: number,
): number {
  const dutyFraction = Math.abs(motorVoltageV) / busVoltageV;
  return Math.abs(currentA) * (dutyFraction + blend * (1 - dutyFraction));
}
