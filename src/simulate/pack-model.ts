import { arrheniusRatio, coldCapacityRatio } from '../physics/cell.js';
import { openCircuitVoltagesV } from '../physics/cell-tables.js';
import { wireResistanceOhm } from '../physics/wire.js';
import type { Pack, Wiring } from '../study/supply.js';
import { type PackCurve, packCurve } from './pack-curve.js';

/** Coulombs in an ampere-hour. */
const coulombsPerAh = 3600;

/**
 * Resistance times capacity of a lithium-polymer string by its C label: 600 mΩ·Ah over the label
 * (from experience: a label of 20C stands for about 30 mΩ·Ah).
 */
const labelledResistanceOhmC = 0.6 * coulombsPerAh;

/** A regulator lets go when its input comes this close to its output. */
export const regulatorHeadroomV = 0.3;

/** Limits at which a run ends, and the pack's electrical constants at its temperature. */
export interface PackModel {
  seriesCount: number;
  parallelCount: number;
  /** Usable charge of one cell, at temperature and age. */
  cellChargeC: number;
  relaxationTimeS: number;
  leadOhm: number;
  /** Source voltage and resistances over the state of charge. */
  curve: PackCurve;
  /** Bus voltages, all cells, after the leads. */
  cutOffBusV: number;
  warningBusV: number;
  controllerBusV: number;
  regulatorBusV: number;
  /** The highest of the three above that end a run. */
  lowestBusV: number;
  /** All cells, before the leads. */
  floorBusV: number;
  reserveFraction: number;
}

/** Resistance of wire (both ways), switch and connector. */
export function leadResistanceOhm(wiring: Wiring): number {
  return (
    wireResistanceOhm(2 * wiring.lengthM, wiring.areaM2) +
    wiring.switchResistanceOhm +
    wiring.connectorResistanceOhm
  );
}

/** Sustained resistance of one cell at 25 °C: as given, by the C label (lipo), or by its chemistry. */
export function cellResistanceOhm(pack: Pack): number {
  if (pack.cellResistanceOhm !== null) return pack.cellResistanceOhm;
  const stringChargeC = pack.capacityC / pack.parallelCount;
  const byLabel = pack.chemistry.id === 'lipo' && pack.dischargeRatingPerH !== null;
  const productOhmC = byLabel
    ? labelledResistanceOhmC / pack.dischargeRatingPerH!
    : pack.chemistry.resistanceChargeOhmC;
  return productOhmC / stringChargeC;
}

/**
 * The chosen pack, ready for a run-down. (M17)
 * @param regulatorVoltageV voltage of a regulator fed by the pack; null when there is none
 */
export function packModel(
  pack: Pack,
  wiring: Wiring,
  temperatureK: number,
  regulatorVoltageV: number | null,
): PackModel {
  const { chemistry } = pack;
  const cellOhm = cellResistanceOhm(pack) * arrheniusRatio(chemistry.activationEnergyJPerMol, temperatureK);
  const cutOffBusV = pack.seriesCount * pack.cutOffVoltageV;
  const controllerBusV = wiring.controllerMinimumV ?? Number.NEGATIVE_INFINITY;
  const regulatorBusV =
    regulatorVoltageV === null ? Number.NEGATIVE_INFINITY : regulatorVoltageV + regulatorHeadroomV;
  const leadOhm = leadResistanceOhm(wiring);
  const { seriesCount, parallelCount } = pack;
  return {
    seriesCount,
    parallelCount,
    cellChargeC:
      (pack.capacityC / parallelCount) *
      pack.agedToFraction *
      coldCapacityRatio(chemistry.coldLossPerK, temperatureK),
    relaxationTimeS: chemistry.relaxationTimeS,
    leadOhm,
    curve: packCurve({
      seriesCount,
      parallelCount,
      openCircuitVoltagesV: openCircuitVoltagesV[chemistry.id],
      packOhm: (seriesCount * cellOhm * chemistry.immediateFraction) / parallelCount,
      relaxingOhm: cellOhm * (1 - chemistry.immediateFraction),
      leadOhm,
    }),
    cutOffBusV,
    warningBusV: pack.seriesCount * pack.warningVoltageV,
    controllerBusV,
    regulatorBusV,
    lowestBusV: Math.max(cutOffBusV, controllerBusV, regulatorBusV),
    floorBusV: pack.seriesCount * chemistry.floorVoltageV,
    reserveFraction: pack.reserveFraction,
  };
}
