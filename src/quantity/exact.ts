/**
 * Exact definitions that every unit factor is derived from
 * (international yard and pound 1959; standard acceleration of free fall, 3rd CGPM 1901).
 */
const standardGravityMPerS2 = 9.80665;
export const inchM = 0.0254;
export const footM = 12 * inchM;
export const poundKg = 0.45359237;
export const ounceKg = poundKg / 16;

export const kilogramForceN = standardGravityMPerS2;
export const poundForceN = poundKg * standardGravityMPerS2;
export const ounceForceN = ounceKg * standardGravityMPerS2;

export const degreeRad = Math.PI / 180;
export const minuteS = 60;
export const hourS = 3600;
