import { arrheniusRatio, coldCapacityRatio } from '../../physics/cell.js';
import { openCircuitVoltagesV } from '../../physics/cell-tables.js';
import type { Study } from '../../study/study.js';
import { cellResistanceOhm, leadResistanceOhm } from '../pack-model.js';
import type { PackDraw } from './quick-run-down.js';

/** The chosen pack with the numbers of one draw. (M17) */
export function packDrawOf(study: Study): PackDraw {
  const { pack, wiring, packTemperatureK } = study;
  const { chemistry, seriesCount, parallelCount } = pack;
  const cellOhm =
    cellResistanceOhm(pack) * arrheniusRatio(chemistry.activationEnergyJPerMol, packTemperatureK);
  const packOhm = (seriesCount * cellOhm) / parallelCount;
  const packLowestBusV = Math.max(
    seriesCount * pack.cutOffVoltageV,
    wiring.controllerMinimumV ?? Number.NEGATIVE_INFINITY,
  );
  return {
    seriesCount,
    openCircuitVoltagesV: openCircuitVoltagesV[chemistry.id],
    chargeC:
      pack.capacityC * pack.agedToFraction * coldCapacityRatio(chemistry.coldLossPerK, packTemperatureK),
    immediateOhm: packOhm * chemistry.immediateFraction,
    relaxingOhm: packOhm * (1 - chemistry.immediateFraction),
    relaxationTimeS: chemistry.relaxationTimeS,
    leadOhm: leadResistanceOhm(wiring),
    packLowestBusV,
    lowestBusV: packLowestBusV,
    floorBusV: seriesCount * chemistry.floorVoltageV,
    warningBusV: seriesCount * pack.warningVoltageV,
    reserveFraction: pack.reserveFraction,
  };
}
