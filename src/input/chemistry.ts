import { formatWithSpread } from '../quantity/format.js';
import type { Provenance } from '../study/provenance.js';
import type { Chemistry, ChemistryId } from '../study/supply.js';
import type { Assumptions } from './read-assumptions.js';
import { type RowReading, scaled } from './row-reading.js';

/** A chemistry from the table of assumptions. */
export function chemistryOf(id: ChemistryId, assumptions: Assumptions): Chemistry {
  const number = (item: string) => assumptions.of('chemistry', id, item).value as number;
  return {
    id,
    resistanceChargeOhmC: number('resistance_capacity'),
    immediateFraction: number('immediate_share'),
    relaxationTimeS: number('relaxation_time'),
    activationEnergyJPerMol: number('activation_energy'),
    coldLossPerK: number('cold_loss'),
    fullVoltageV: number('full_voltage'),
    nominalVoltageV: number('nominal_voltage'),
    cutOffVoltageV: number('cut_off_voltage'),
    floorVoltageV: number('floor_voltage'),
  };
}

/**
 * The history of a chemistry's resistance, where the pack states none of its own. Where the resistance follows from
 * the discharge label instead, the label takes the spread of that rule.
 */
export function chemistryHistory(
  id: ChemistryId,
  reading: RowReading,
  assumptions: Assumptions,
): Provenance[] {
  if (!reading.isBlank('cellResistanceOhm')) return [];
  const labelSpread = assumptions.find('chemistry', id, 'discharge_label_spread');
  const label = reading.provenance.get('dischargeRatingPerH');
  if (labelSpread !== null && label !== undefined) {
    label.spread ??= scaled(labelSpread.spread, label.value as number);
    label.basis = `spread: ${labelSpread.written} times the figure, ${labelSpread.basis}`;
    return [];
  }
  const { value, spread, basis } = assumptions.of('chemistry', id, 'resistance_capacity');
  return [
    {
      path: `${reading.pathPrefix}chemistry.resistanceChargeOhmC`,
      field: 'resistance_capacity',
      owner: reading.owner,
      origin: 'assumed',
      written: null,
      shown: formatWithSpread(value as number, spread, 'resistance-charge'),
      value: value as number,
      basis,
      spread,
      place: null,
    },
  ];
}
