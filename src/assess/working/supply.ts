import { formatValue } from '../../quantity/format.js';
import type { LoopEnergy } from '../../simulate/outcome.js';
import type { CalculationLine } from '../assessment.js';
import { amperes, joules, minutes, percent, plain, volts } from '../figures.js';
import { from, type LineWriter, section, type Worked } from './line.js';
import { holdEnergyWorking } from './pack-side.js';

/** From the energy of one loop to the minutes on one pack, by pocket calculator and by the run-down. (M17, M18) */
export function supplyWorking(worked: Worked): CalculationLine[] {
  const { nominal } = worked.run;
  const line = section('Pack and runtime');
  const { energy, loopS, meanPackCurrentA, runtimeS } = nominal;
  if (energy === null || loopS === null || meanPackCurrentA === null) return [];
  const { bus } = worked.prepared.model;
  const loopJ = totalJ(energy);
  const lines = [
    ...holdEnergyWorking(worked, line),
    line(
      'Energy of one loop',
      'E = moving + holding + resting + idle + loads',
      energyParts(energy),
      joules(loopJ),
      'M11, M15',
    ),
    line(
      'Mean current',
      'I = E / (V·t)',
      `${joules(loopJ)} / (${volts(bus.packNominalV)} · ${formatValue(loopS, 's')})`,
      amperes(meanPackCurrentA),
      'at nominal voltage',
    ),
    usableCharge(worked, line),
  ];
  const estimateS = usableChargeC(worked) / meanPackCurrentA;
  lines.push(
    line(
      'Runtime by pocket calculator',
      't = Q / I',
      `${formatValue(usableChargeC(worked), 'Ah')} / ${amperes(meanPackCurrentA)}`,
      minutes(estimateS),
      'estimate: voltage taken as constant',
    ),
  );
  if (runtimeS !== null) {
    const difference = runtimeS / estimateS - 1;
    lines.push(
      line(
        'Runtime by the run-down',
        'E(SOC) − V_1 = V + R·(A/V + B), step by step',
        `ends at ${nominal.endReason ?? 'nothing'}; ${againstEstimate(difference)} the estimate, which takes the voltage as nominal all along`,
        minutes(runtimeS),
        from('M17, M18', 'plett'),
      ),
    );
  }
  return lines;
}

/** How far a runtime lies from its estimate; what rounds to nothing is as much. */
function againstEstimate(difference: number): string {
  const size = percent(Math.abs(difference));
  return size === percent(0) ? 'as much as' : `${size} ${difference < 0 ? 'less' : 'more'} than`;
}

function usableChargeC({ study, prepared }: Worked): number {
  return prepared.pack.cellChargeC * prepared.pack.parallelCount * (1 - study.pack.reserveFraction);
}

function usableCharge(worked: Worked, line: LineWriter): CalculationLine {
  const { pack } = worked.study;
  const coldRatio =
    (worked.prepared.pack.cellChargeC * pack.parallelCount) / (pack.capacityC * pack.agedToFraction);
  return line(
    'Charge to use',
    'Q = capacity · aged to · cold · (1 − reserve)',
    `${formatValue(pack.capacityC, 'Ah')} · ${plain(pack.agedToFraction)} · ${plain(coldRatio)} · (1 − ${plain(pack.reserveFraction)})`,
    formatValue(usableChargeC(worked), 'Ah'),
    'M17; cold loss by chemistry',
  );
}

function totalJ(energy: LoopEnergy): number {
  const loadsJ = energy.loads.reduce((sum, load) => sum + load.energyJ, 0);
  return energy.drivesMovingJ + energy.drivesHoldingJ + energy.drivesRestingJ + energy.drivesIdleJ + loadsJ;
}

function energyParts(energy: LoopEnergy): string {
  const parts = [energy.drivesMovingJ, energy.drivesHoldingJ, energy.drivesRestingJ, energy.drivesIdleJ];
  return [...parts, ...energy.loads.map((load) => load.energyJ)].map(joules).join(' + ');
}
