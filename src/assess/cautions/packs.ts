import type { Study } from '../../study/study.js';
import type { Pack } from '../../study/supply.js';
import type { Caution } from '../assessment.js';
import { decimal, wattHours } from '../figures.js';
import { approvalWh, freeWh } from '../thresholds.js';
import { type CautionWords, general } from './caution.js';

/** Energy of a pack at its nominal voltage, in joules. */
export function packEnergyJ(pack: Pack): number {
  return pack.seriesCount * pack.chemistry.nominalVoltageV * pack.capacityC;
}

/** Cautions about the packs themselves: energy, travel, how well their figures are known. */
export function packCautions(study: Study): Caution[] {
  return [...lithium(study), ...cutOffHigh(study), ...labelOnly(study)];
}

/** Below this cut-off per cell a computed runtime is good to about ±10 % when the cell is known. */
const sureCutOffV = 3.3;

function lithium({ pack, packsCarriedCount }: Study): Caution[] {
  if (pack.chemistry.id === 'nimh') return [];
  const energyWh = packEnergyJ(pack) / 3600;
  const line =
    energyWh <= freeWh
      ? `under the ${freeWh} Wh that passenger aircraft allow without approval`
      : energyWh <= approvalWh
        ? `between ${freeWh} and ${approvalWh} Wh: an airline must approve it`
        : `over ${approvalWh} Wh: not allowed on a passenger aircraft`;
  const words = {
    figure: wattHours(packEnergyJ(pack)),
    text: `One pack holds ${wattHours(packEnergyJ(pack))}, ${line}; packs carried: ${packsCarriedCount}.`,
    action: 'Carry packs by hand with covered terminals, and ask organiser and airline before the day.',
  };
  return [general('watt-hours', energyWh > freeWh ? 'caution' : 'note', words)];
}

function cutOffHigh({ pack }: Study): Caution[] {
  if (pack.cutOffVoltageV < sureCutOffV + 0.2 || pack.chemistry.id === 'nimh') return [];
  const words: CautionWords = {
    figure: `${decimal(pack.cutOffVoltageV, 2)} V per cell`,
    text: `A cut-off of ${decimal(pack.cutOffVoltageV, 2)} V per cell lies on the flat part of the discharge: runtimes are only a range.`,
    action: 'Measure one discharge with the real load before you rely on minutes.',
  };
  return [general('cut-off-high', 'note', words)];
}

function labelOnly({ pack }: Study): Caution[] {
  if (pack.cellResistanceOhm !== null) return [];
  const words: CautionWords = {
    figure: '±25 %',
    text: 'The pack is known by its label only: runtimes are good to about ±25 %, against ±10 % when the resistance of its cells is measured.',
    action: 'Measure one full discharge, or the cell resistance with a charger that shows it.',
  };
  return [general('pack-by-label', 'note', words)];
}
