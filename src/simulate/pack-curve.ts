import { openCircuitVoltageV, resistanceMultiplier } from '../physics/cell.js';

/**
 * Source voltage and resistances of a pack over its state of charge as straight pieces between common knots:
 * value = base + slope × charge. Charge beyond full or empty counts as full or empty.
 */
export interface PackCurve {
  /** All cells, before the relaxation voltage. */
  emfBasesV: Float64Array;
  emfSlopesV: Float64Array;
  /** R_0 of all cells and the leads. */
  ohmBases: Float64Array;
  ohmSlopes: Float64Array;
  /** R_1 of one cell as the pack's current sees it: over the cells in parallel. */
  relaxBases: Float64Array;
  relaxSlopes: Float64Array;
}

/** Knots at which both the discharge curves and the resistance rise bend; they are even from the third on. */
const knots = [0, 0.02, ...Array.from({ length: 20 }, (_, i) => (i + 1) / 20)];

/** Number of pieces, the constant ones beyond empty and full included. */
const pieceCount = knots.length + 1;

/** Which piece a state of charge lies in: 0 = empty and below, the last = full and above. */
export function pieceOf(socFraction: number): number {
  if (socFraction >= 1) return pieceCount - 1;
  if (socFraction >= 0.05) return Math.floor(socFraction * 20) + 2;
  if (socFraction >= 0.02) return 2;
  return socFraction > 0 ? 1 : 0;
}

/** What the curve is made of. */
export interface PackCurveParts {
  seriesCount: number;
  parallelCount: number;
  openCircuitVoltagesV: readonly number[];
  /** R_0 of all cells together, before its rise at low charge. */
  packOhm: number;
  /** R_1 of one cell, likewise. */
  relaxingOhm: number;
  leadOhm: number;
}

/** Lay a pack's voltages and resistances out in pieces. */
export function packCurve(parts: PackCurveParts): PackCurve {
  const emf = (soc: number) => parts.seriesCount * openCircuitVoltageV(parts.openCircuitVoltagesV, soc);
  const ohm = (soc: number) => parts.packOhm * resistanceMultiplier(soc) + parts.leadOhm;
  const relax = (soc: number) => (parts.relaxingOhm * resistanceMultiplier(soc)) / parts.parallelCount;
  const [emfBasesV, emfSlopesV] = pieces(emf);
  const [ohmBases, ohmSlopes] = pieces(ohm);
  const [relaxBases, relaxSlopes] = pieces(relax);
  return { emfBasesV, emfSlopesV, ohmBases, ohmSlopes, relaxBases, relaxSlopes };
}

function pieces(valueAt: (soc: number) => number): [bases: Float64Array, slopes: Float64Array] {
  const bases = new Float64Array(pieceCount);
  const slopes = new Float64Array(pieceCount);
  bases[0] = valueAt(0);
  bases[pieceCount - 1] = valueAt(1);
  for (let piece = 1; piece < pieceCount - 1; piece++) {
    const low = knots[piece - 1]!;
    const high = knots[piece]!;
    slopes[piece] = (valueAt(high) - valueAt(low)) / (high - low);
    bases[piece] = valueAt(low) - slopes[piece]! * low;
  }
  return [bases, slopes];
}
