import { driveCountOf } from '../../simulate/burdens.js';
import type { Bus } from '../../simulate/bus.js';
import type { CalculationLine } from '../assessment.js';
import { amperes, joules, plain, volts, watts } from '../figures.js';
import type { LineWriter, Worked } from './line.js';

/** What the current on a drive's own leads is called: behind a regulator it is not the pack's. */
export const driveCurrentName = ({ regulated }: Pick<Bus, 'regulated'>): string =>
  regulated ? 'Current of one drive, behind the regulator' : 'Current of one drive';

/** What the pack gives for one drive: its electronics added, and converted where a regulator stands between. (M15) */
export function packLine({ candidate, prepared }: Worked, busA: number, line: LineWriter): CalculationLine {
  const { bus } = prepared.model;
  const { idleCurrentA } = candidate.sheet;
  const driveA = `${amperes(busA)} + ${amperes(idleCurrentA)}`;
  if (!bus.regulated) {
    return line('Pack current of one drive', 'I_bus + I_idle', driveA, amperes(busA + idleCurrentA), 'sum');
  }
  const packA = ((busA + idleCurrentA) * bus.nominalV) / (bus.regulatorEfficiency * bus.packNominalV);
  return line(
    'Pack current of one drive',
    'V_reg·(I_bus + I_idle) / (η_reg·V_pack)',
    `${volts(bus.nominalV)} · (${driveA}) / (${plain(bus.regulatorEfficiency)} · ${volts(bus.packNominalV)})`,
    amperes(packA),
    'what goes into the regulator comes out, but for its loss',
  );
}

/** What a loop spends on powered holds, from the mean current over them: power with the idle current, energy without. */
export function holdEnergyWorking(
  { study, candidate, run, prepared }: Worked,
  line: LineWriter,
): CalculationLine[] {
  const { bus } = prepared.model;
  const { energy, holdPowerW, holdPackCurrentA, holdCurrentUsed } = run.nominal;
  const holdS = study.show.loop.reduce(
    (sum, { action, durationS }) => sum + (action === 'hold' ? durationS : 0),
    0,
  );
  if (energy === null || holdCurrentUsed === 'unpowered' || holdS === 0) return [];
  const idleW =
    (driveCountOf(study, candidate) * candidate.sheet.idleCurrentA * bus.nominalV) /
    (bus.regulated ? bus.regulatorEfficiency : 1);
  const power = line(
    'Power of all drives while holding',
    'P = V_pack·I_pack, mean over the holds',
    `${volts(bus.packNominalV)} · ${amperes(holdPackCurrentA)}`,
    watts(holdPowerW),
    'at nominal voltage',
  );
  // A switched drive that arrives early waits within its move, which counts as holding but is no hold of the list.
  if (!prepared.model.drive.pulsed) return [power];
  return [
    power,
    line(
      'Energy of the holds of one loop',
      'E = (P − P_idle)·t',
      `(${watts(holdPowerW)} − ${watts(idleW)}) · ${plain(holdS)} s`,
      joules(energy.drivesHoldingJ),
      'idle electronics are counted apart',
    ),
  ];
}
