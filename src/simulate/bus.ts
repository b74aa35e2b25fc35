import type { DriveSheet } from '../drives/sheet.js';
import { openCircuitVoltageV } from '../physics/cell.js';
import { openCircuitVoltagesV } from '../physics/cell-tables.js';
import type { Pack } from '../study/supply.js';

/** State of charge at which a switched drive's speed is taken: neither fresh nor flat. */
const middleSocFraction = 0.5;

/** Voltages a candidate's motor meets. With a regulator they are all the regulator's. */
export interface Bus {
  /** Nominal voltage of the pack itself. */
  packNominalV: number;
  /** Pack straight off the charger. */
  packFullV: number;
  /** Nominal voltage of the drive's own bus. */
  nominalV: number;
  /** The weakest bus the drive must still work from. */
  weakV: number;
  /** The bus of a half-full pack, without load. */
  middleV: number;
  /** The highest voltage the drive sees. */
  highestV: number;
  regulated: boolean;
  regulatorEfficiency: number;
  /** For all drives of the candidate together; Infinity when not limited. */
  regulatorLimitA: number;
}

/** Voltages between pack and drive. (M13, M15, M16) */
export function busOf(pack: Pack, sheet: DriveSheet): Bus {
  const { seriesCount, chemistry } = pack;
  const packNominalV = seriesCount * chemistry.nominalVoltageV;
  const packFullV = seriesCount * chemistry.fullVoltageV;
  const regulated = sheet.supply === 'regulated' && sheet.regulatorVoltageV !== null;
  const regulatorV = sheet.regulatorVoltageV ?? packNominalV;
  const open = openCircuitVoltageV(openCircuitVoltagesV[chemistry.id], middleSocFraction);
  return {
    packNominalV,
    packFullV,
    nominalV: regulated ? regulatorV : packNominalV,
    weakV: regulated ? regulatorV : seriesCount * pack.cutOffVoltageV,
    middleV: regulated ? regulatorV : seriesCount * open,
    highestV: regulated ? regulatorV : packFullV,
    regulated,
    regulatorEfficiency: sheet.regulatorEfficiency,
    regulatorLimitA: regulated
      ? (sheet.regulatorLimitA ?? Number.POSITIVE_INFINITY)
      : Number.POSITIVE_INFINITY,
  };
}
