import { power } from '../quantity/power.js';
import { copperReferenceK, copperResistivityOhmM } from './constants.js';
import { copperResistanceRatio } from './dc-motor.js';

/** Ampere at 1 mm², and the most per mm² that thin wire is trusted with; common practice, from memory. */
const currentAtOneSquareMillimetreA = 10;
const largestDensityAPerM2 = 17e6;

/** Share of its rating that a fuse carries for ever at 25 °C; common guidance of fuse makers. */
const fuseContinuousFraction = 0.75;

/**
 * Resistance of a copper wire.
 * @param lengthM of the conductor: both ways for a pair
 * @param areaM2 above 0
 * @param temperatureK of the copper; 20 °C when left out
 * @returns Ω
 * @source iec-60028, resistivity and temperature coefficient, from memory
 */
export function wireResistanceOhm(lengthM: number, areaM2: number, temperatureK = copperReferenceK): number {
  return ((copperResistivityOhmM * lengthM) / areaM2) * copperResistanceRatio(temperatureK);
}

/**
 * Current that a wire inside a body or a housing may carry all the time, on the safe side.
 * Common practice, from memory: 10 A at 1 mm² growing with area^0.75, never over 17 A/mm²; this stays
 * within the chassis-wiring tables in common use from 30 to 10 AWG.
 * @param areaM2 copper cross-section
 * @returns A
 */
export function wireContinuousCurrentA(areaM2: number): number {
  return Math.min(currentAtOneSquareMillimetreA * power(areaM2 * 1e6, 0.75), largestDensityAPerM2 * areaM2);
}

/**
 * Current that a fuse carries for ever at 25 °C. Common guidance of fuse makers.
 * @param ratingA printed rating
 * @returns A
 */
export function fuseContinuousCurrentA(ratingA: number): number {
  return fuseContinuousFraction * ratingA;
}
