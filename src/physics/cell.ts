import { cellReferenceK, gasConstantJPerMolK } from './constants.js';

/**
 * Open-circuit voltage of one cell, straight between the charges of the table and constant outside them.
 * @param table 22 voltages, as in `openCircuitVoltagesV`
 * @param socFraction state of charge, 0…1
 * @returns V
 * @source plett, chapter 2, open-circuit voltage (M17)
 */
export function openCircuitVoltageV(table: readonly number[] | Float64Array, socFraction: number): number {
  if (socFraction >= 0.05) {
    const scaled = socFraction * 20;
    if (scaled >= 20) return table[21]!;
    const knot = Math.floor(scaled);
    const low = table[knot + 1]!;
    return low + (table[knot + 2]! - low) * (scaled - knot);
  }
  if (socFraction >= 0.02) return table[1]! + ((table[2]! - table[1]!) * (socFraction - 0.02)) / 0.03;
  if (socFraction > 0) return table[0]! + ((table[1]! - table[0]!) * socFraction) / 0.02;
  return table[0]!;
}

/**
 * Resistance of a cell over its resistance at mid charge: 1 down to 50 %, then rising to 2.5 when empty.
 * Straight between its knots, constant outside them.
 * @param socFraction state of charge, 0…1
 * @source plett, chapter 2, resistance against state of charge; the figures from memory (M17)
 */
export function resistanceMultiplier(socFraction: number): number {
  if (socFraction >= 0.5) return 1;
  if (socFraction >= 0.3) return 1.05 - 0.25 * (socFraction - 0.3);
  if (socFraction >= 0.2) return 1.1 - 0.5 * (socFraction - 0.2);
  if (socFraction >= 0.15) return 1.2 - 2 * (socFraction - 0.15);
  if (socFraction >= 0.1) return 1.4 - 4 * (socFraction - 0.1);
  if (socFraction >= 0.05) return 1.9 - 10 * (socFraction - 0.05);
  return socFraction > 0 ? 2.5 - 12 * socFraction : 2.5;
}

/**
 * Resistance of a cell over its resistance at 25 °C.
 * @param activationEnergyJPerMol of the chemistry
 * @param temperatureK of the cell
 * @returns 1 at 25 °C, more in the cold
 * @source plett, chapter 2, Arrhenius law (M17)
 */
export function arrheniusRatio(activationEnergyJPerMol: number, temperatureK: number): number {
  return Math.exp((activationEnergyJPerMol / gasConstantJPerMolK) * (1 / temperatureK - 1 / cellReferenceK));
}

/**
 * Capacity of a cell over its capacity at 25 °C; nothing is gained above that, never below 0.
 * @param coldLossPerK share lost per kelvin below 25 °C
 * @param temperatureK of the cell
 * @source plett, chapter 2, capacity against temperature; linear rule from memory (M17)
 */
export function coldCapacityRatio(coldLossPerK: number, temperatureK: number): number {
  return Math.max(0, 1 - coldLossPerK * Math.max(0, cellReferenceK - temperatureK));
}

/**
 * Bus voltage under a load that draws part of its current as constant power: V = E − R·(A/V + B).
 * The upper of the two roots, which is the one that a rising load reaches.
 * NaN when the source cannot give that power (collapse), or when no voltage is left.
 * @param emfV E, source voltage before the resistance
 * @param resistanceOhm R, of cells and leads
 * @param powerPartW A, drawn as constant power; negative when it feeds back
 * @param currentPartA B, drawn as constant current
 * @returns V
 * @source plett, chapter 2, cell under constant power (M17)
 */
export function busVoltageV(
  emfV: number,
  resistanceOhm: number,
  powerPartW: number,
  currentPartA: number,
): number {
  const reducedV = emfV - resistanceOhm * currentPartA;
  const squared = reducedV * reducedV - 4 * resistanceOhm * powerPartW;
  const voltageV = (reducedV + Math.sqrt(squared)) / 2;
  return voltageV > 0 ? voltageV : Number.NaN;
}
