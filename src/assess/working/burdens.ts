import { comparedAtM } from '../../physics/sound.js';
import { formatQuantity } from '../../quantity/format.js';
import { driveCountOf } from '../../simulate/burdens.js';
import type { CalculationLine } from '../assessment.js';
import { amperes, effortOf, mass, ohms, plain, volts } from '../figures.js';
import { from, section, type Worked } from './line.js';

/** Strength left, mass on the body, money and noise. */
export function burdenWorking(worked: Worked): CalculationLine[] {
  return [...marginWorking(worked), ...massWorking(worked), ...costWorking(worked), ...noiseWorking(worked)];
}

function marginWorking({ run, prepared }: Worked): CalculationLine[] {
  const { drive, bus } = prepared.model;
  const margin = run.nominal.torqueMarginRatio;
  if (margin === null) return [];
  const line = section('Torque margin');
  const available =
    drive.forwardEfficiency * drive.speedConstant * (bus.weakV / drive.resistanceOhm - drive.noLoadCurrentA);
  return [
    line(
      'Effort from the weakest bus',
      'T = η_f·K·(V_weak/R − I_0)',
      `${plain(drive.forwardEfficiency)} · ${plain(drive.speedConstant)} · (${volts(bus.weakV)} / ${ohms(drive.resistanceOhm)} − ${amperes(drive.noLoadCurrentA)})`,
      effortOf(available, drive.motion),
      'M5, M13',
    ),
    line(
      'Torque margin',
      'T / T_peak, at the worst position',
      `${effortOf(available, drive.motion)} / ${effortOf(available / margin, drive.motion)}, friction, gust and bounce included`,
      plain(margin),
      'M1–M3',
    ),
  ];
}

function massWorking({ study, candidate, run }: Worked): CalculationLine[] {
  const { massKg, mountMassKg, electronicsMassKg } = candidate.sheet;
  const total = run.nominal.bodyMassKg;
  if (total === null || massKg === null || study.pack.massKg === null) return [];
  const parts = [massKg, mountMassKg ?? 0, electronicsMassKg ?? 0].map(mass).join(' + ');
  return [
    section('Mass')(
      study.carrier.worn ? 'Mass on the body' : 'Mass carried',
      'drives · (drive + mount + electronics) + packs',
      `${driveCountOf(study, candidate)} · (${parts}) + ${study.packsCarriedCount} · ${mass(study.pack.massKg)}`,
      mass(total),
      'sum',
    ),
  ];
}

function costWorking({ study, candidate, run }: Worked): CalculationLine[] {
  const { cost } = run.nominal;
  const { priceMoney, extraCostMoney } = candidate.sheet;
  if (cost === null) return [];
  const isBaseline = candidate.id === study.baselineId;
  const extra = plain(extraCostMoney ?? 0);
  return [
    section('Cost')(
      'Cost of the change',
      isBaseline ? 'extra cost only: the drive is there already' : 'drives · price + extra cost',
      isBaseline ? extra : `${driveCountOf(study, candidate)} · ${plain(priceMoney ?? 0)} + ${extra}`,
      `${plain(cost)} ${study.about.currency}`.trim(),
      'sum',
    ),
  ];
}

function noiseWorking({ candidate, run }: Worked): CalculationLine[] {
  const { noiseDb, noiseDistanceM } = candidate.sheet;
  const level = run.nominal.noiseDb;
  if (noiseDb === null || level === null) return [];
  const ratio = plain((noiseDistanceM ?? comparedAtM) / comparedAtM);
  return [
    section('Noise')(
      'Sound level at 1 m',
      'L_1 = L + 20·log10(d / 1 m)',
      `${formatQuantity(noiseDb, 'sound-level')} + 20·log10(${ratio})`,
      formatQuantity(level, 'sound-level'),
      from('open field, 6 dB for each doubling', 'iso-9613-2'),
    ),
  ];
}
