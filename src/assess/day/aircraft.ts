import type { Pack } from '../../study/supply.js';
import { packEnergyJ } from '../cautions/packs.js';
import { wattHours } from '../figures.js';
import { approvalWh, freeWh } from '../thresholds.js';
import type { AircraftLine } from './day-plan.js';

const joulesPerWh = 3600;

/** Where one pack stands against the lines for passenger aircraft. */
export function aircraftLine(pack: Pack): AircraftLine {
  const energyJ = packEnergyJ(pack);
  const energyWh = energyJ / joulesPerWh;
  const has = `One pack holds ${wattHours(energyJ)}`;
  if (pack.chemistry.id === 'nimh') {
    return { energyJ, category: 'other', text: `${has}; the lines for lithium batteries do not apply.` };
  }
  if (energyWh <= freeWh) {
    const text = `${has}: passenger aircraft take up to ${freeWh} Wh in the cabin without approval.`;
    return { energyJ, category: 'free', text };
  }
  if (energyWh <= approvalWh) {
    const text = `${has}: from ${freeWh + 1} to ${approvalWh} Wh the airline has to approve each pack, in the cabin.`;
    return { energyJ, category: 'approval', text };
  }
  const text = `${has}: over ${approvalWh} Wh no passenger aircraft takes it.`;
  return { energyJ, category: 'forbidden', text };
}
