/** Factors from exact definitions (NIST SP 811, appendix B), so that a value can be typed in its source's own unit. */
export const inchM = 0.0254;
export const poundForceN = 0.45359237 * 9.80665;
export const poundForceInchNm = poundForceN * inchM;
export const kilogramForceCentimetreNm = 9.80665 * 0.01;
export const rpmRadPerS = (2 * Math.PI) / 60;
export const degreeRad = Math.PI / 180;

/** Kelvin from degrees Celsius. */
export const celsiusK = (celsius: number): number => celsius + 273.15;

/** A number as it would be printed with this many significant digits. */
export const significant = (value: number, digits: number): number => Number(value.toPrecision(digits));
