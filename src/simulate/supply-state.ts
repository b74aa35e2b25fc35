import { busVoltageV } from '../physics/cell.js';
import type { EndReason } from './outcome.js';
import { pieceOf } from './pack-curve.js';
import type { PackModel } from './pack-model.js';

/** Charge and relaxation voltage of one cell while a pack runs down. Changed in place. */
export interface CellState {
  socFraction: number;
  /** Voltage over the slow resistance of the cell (V_1). */
  relaxationV: number;
}

/** A freshly charged, rested cell. */
export const freshCell = (): CellState => ({ socFraction: 1, relaxationV: 0 });

/**
 * Bus voltage, after the leads, under a load that takes I = A/V + B. (M17)
 * @returns NaN when the pack cannot supply the load at all
 */
export function busAtV(
  pack: PackModel,
  socFraction: number,
  relaxationV: number,
  powerPartW: number,
  currentPartA: number,
): number {
  const { curve } = pack;
  const piece = pieceOf(socFraction);
  const emfV =
    curve.emfBasesV[piece]! + curve.emfSlopesV[piece]! * socFraction - pack.seriesCount * relaxationV;
  const ohm = curve.ohmBases[piece]! + curve.ohmSlopes[piece]! * socFraction;
  return busVoltageV(emfV, ohm, powerPartW, currentPartA);
}

/** R_1 of a cell at a state of charge, as the pack's current sees it. */
export function relaxingOhmAt(pack: PackModel, socFraction: number): number {
  const piece = pieceOf(socFraction);
  return pack.curve.relaxBases[piece]! + pack.curve.relaxSlopes[piece]! * socFraction;
}

/** Bus voltage of a state under a load; NaN when the pack cannot supply it. */
export const busUnderLoadV = (
  pack: PackModel,
  state: CellState,
  powerPartW: number,
  currentPartA: number,
): number => busAtV(pack, state.socFraction, state.relaxationV, powerPartW, currentPartA);

/** The distances of a state from each end of the run, in volts of the bus (the reserve scaled to that order). */
function distancesV(
  pack: PackModel,
  socFraction: number,
  busV: number,
  powerPartW: number,
  currentPartA: number,
): Record<Exclude<EndReason, 'collapse'>, number> {
  const currentA = powerPartW / busV + currentPartA;
  return {
    'cut-off': busV - pack.cutOffBusV,
    'cell-floor': busV + currentA * pack.leadOhm - pack.floorBusV,
    reserve: (socFraction - pack.reserveFraction) * pack.seriesCount,
    controller: busV - pack.controllerBusV,
    regulator: busV - pack.regulatorBusV,
  };
}

/** How far a state is from the nearest end of the run under a load. Zero or less ends it. */
export function marginV(pack: PackModel, state: CellState, powerPartW: number, currentPartA: number): number {
  const busV = busUnderLoadV(pack, state, powerPartW, currentPartA);
  if (Number.isNaN(busV)) return Number.NEGATIVE_INFINITY;
  const currentA = powerPartW / busV + currentPartA;
  return Math.min(
    busV - pack.lowestBusV,
    busV + currentA * pack.leadOhm - pack.floorBusV,
    (state.socFraction - pack.reserveFraction) * pack.seriesCount,
  );
}

/** Which end a state with no margin left has reached. */
export function endReasonOf(
  pack: PackModel,
  state: CellState,
  powerPartW: number,
  currentPartA: number,
): EndReason {
  const busV = busUnderLoadV(pack, state, powerPartW, currentPartA);
  if (Number.isNaN(busV)) return 'collapse';
  const distances = Object.entries(distancesV(pack, state.socFraction, busV, powerPartW, currentPartA));
  let nearest = distances[0]!;
  for (const distance of distances) if (distance[1] < nearest[1]) nearest = distance;
  return nearest[0] as EndReason;
}

/**
 * Advance a cell by one step at constant A and B: midpoint charge, exact exponential for the relaxation. (M18)
 * @param pack that the cell is part of
 * @param state of the cell, changed in place
 * @param powerPartW A of the load I = A/V + B
 * @param currentPartA B of it
 * @param stepS length of the step
 * @param decayHalf exp(−step/2τ), precomputed by the caller
 * @param decay exp(−step/τ), likewise
 */
export function advance(
  pack: PackModel,
  state: CellState,
  powerPartW: number,
  currentPartA: number,
  stepS: number,
  decayHalf: number,
  decay: number,
): void {
  const chargeC = pack.cellChargeC * pack.parallelCount;
  const startSoc = state.socFraction;
  const startV = state.relaxationV;
  const startA = powerPartW / busUnderLoadV(pack, state, powerPartW, currentPartA) + currentPartA;
  state.socFraction = startSoc - (startA * stepS) / (2 * chargeC);
  const slowOhm = relaxingOhmAt(pack, state.socFraction);
  state.relaxationV = startV * decayHalf + startA * slowOhm * (1 - decayHalf);
  const middleA = powerPartW / busUnderLoadV(pack, state, powerPartW, currentPartA) + currentPartA;
  state.socFraction = startSoc - (middleA * stepS) / chargeC;
  state.relaxationV = startV * decay + middleA * slowOhm * (1 - decay);
}
