/**
 * Exact definitions that every unit factor is derived from
 * (international yard and pound 1959; standard acceleration of free fall, 3rd CGPM 1901; zero of the Celsius scale).
 */
export const standardGravityMPerS2 = 9.80665;
/** 0 °C, exact by definition of the scale. */
export const zeroCelsiusK = 273.15;
/** International inch, exact since 1959. */
export const inchM = 0.0254;
/** International foot. */
export const footM = 12 * inchM;
/** Avoirdupois pound, exact since 1959. */
export const poundKg = 0.45359237;
/** Avoirdupois ounce. */
export const ounceKg = poundKg / 16;

/** Weight of a kilogram under standard gravity; the kg of kg·cm. */
export const kilogramForceN = standardGravityMPerS2;
/** Weight of a pound under standard gravity. */
export const poundForceN = poundKg * standardGravityMPerS2;
/** Weight of an ounce under standard gravity; the oz of oz·in. */
export const ounceForceN = ounceKg * standardGravityMPerS2;

/** One degree of angle in radians. */
export const degreeRad = Math.PI / 180;
export const minuteS = 60;
export const hourS = 3600;
