import type { ChemistryId } from '../study/supply.js';
import { type AssumptionRow, fromExperience, row } from './assumption-row.js';

/** What a chemistry brings, in the value grammar. Voltages: full, nominal, cut-off, floor. */
interface ChemistryFigures {
  resistanceCapacity: string;
  immediateShare: string;
  relaxationTime: string;
  activationEnergy: string;
  coldLoss: string;
  voltages: readonly [string, string, string, string];
  basis: string;
}

const figures: Record<ChemistryId, ChemistryFigures> = {
  lipo: {
    resistanceCapacity: '60..120..170 mΩ·Ah',
    immediateShare: '0.60',
    relaxationTime: '60 s',
    activationEnergy: '12 kJ/mol',
    coldLoss: '0.35 %/K',
    voltages: ['4.20', '3.7', '3.3', '3.0'],
    basis: 'worked out from the discharge curves of a cobalt-oxide pouch cell in Ai et al. 2020',
  },
  'nmc-pouch': {
    resistanceCapacity: '60..100..135 mΩ·Ah',
    immediateShare: '0.60',
    relaxationTime: '60 s',
    activationEnergy: '12 kJ/mol',
    coldLoss: '0.35 %/K',
    voltages: ['4.20', '3.7', '3.3', '3.0'],
    basis: 'worked out from the discharge curves of a pouch cell in Reniers, Mulder and Howey 2019',
  },
  'li-ion': {
    resistanceCapacity: '150..200..235 mΩ·Ah',
    immediateShare: '0.65',
    relaxationTime: '60 s',
    activationEnergy: '12 kJ/mol',
    coldLoss: '0.35 %/K',
    voltages: ['4.20', '3.6', '3.0', '2.5'],
    basis: 'worked out from openly licensed rate tests of a cylindrical 5 Ah cell',
  },
  'li-ion-power': {
    resistanceCapacity: '85..100..120 mΩ·Ah',
    immediateShare: '0.70',
    relaxationTime: '60 s',
    activationEnergy: '16 kJ/mol',
    coldLoss: '0.30 %/K',
    voltages: ['4.20', '3.6', '3.0', '2.5'],
    basis:
      'curve of the energy cell with the resistance of cells made for current; from experience, no published source',
  },
  lifepo4: {
    resistanceCapacity: '45..65..100 mΩ·Ah',
    immediateShare: '0.45',
    relaxationTime: '30 s',
    activationEnergy: '27 kJ/mol',
    coldLoss: '0.12 %/K',
    voltages: ['3.65', '3.2', '2.8', '2.5'],
    basis: 'worked out from the measurements of Kawakita de Souza 2021',
  },
  nimh: {
    resistanceCapacity: '60..100..150 mΩ·Ah',
    immediateShare: '0.70',
    relaxationTime: '60 s',
    activationEnergy: '15 kJ/mol',
    coldLoss: '0.50 %/K',
    voltages: ['1.45', '1.2', '1.0', '0.9'],
    basis: `${fromExperience}; the curve is a table of a vehicle module, a weak source`,
  },
};

function chemistryRows(id: ChemistryId): AssumptionRow[] {
  const { voltages, basis, ...own } = figures[id];
  const voltage = (item: string, index: number) =>
    row('chemistry', id, item, 'voltage', `${voltages[index]} V`, 'per cell, common practice');
  return [
    row(
      'chemistry',
      id,
      'resistance_capacity',
      'resistance-charge',
      own.resistanceCapacity,
      `one string of cells; ${basis}`,
    ),
    row('chemistry', id, 'immediate_share', 'ratio', own.immediateShare, basis),
    row('chemistry', id, 'relaxation_time', 'time', own.relaxationTime, basis),
    row('chemistry', id, 'activation_energy', 'molar-energy', own.activationEnergy, basis),
    row('chemistry', id, 'cold_loss', 'per-kelvin', own.coldLoss, `below 25 °C; ${basis}`),
    voltage('full_voltage', 0),
    voltage('nominal_voltage', 1),
    voltage('cut_off_voltage', 2),
    voltage('floor_voltage', 3),
  ];
}

/** Rows about cells. */
export function chemistryAssumptions(): AssumptionRow[] {
  const labelBasis = `a resistance worked out from the C label is right within half to double; ${fromExperience}`;
  return [
    ...(Object.keys(figures) as ChemistryId[]).flatMap(chemistryRows),
    row('chemistry', 'lipo', 'discharge_label_spread', 'ratio', '0.5..2', labelBasis),
  ];
}

type SpreadRow = readonly [item: string, factors: string];

const spreadTable: Record<'listing' | 'data-sheet' | 'measured' | 'feature', readonly SpreadRow[]> = {
  listing: [
    ['stall_effort', '0.6..0.85..1.05'],
    ['no_load_speed', '0.8..0.95..1.1'],
    ['current', '0.8..1..1.4'],
    ['mass', '1 ±5%'],
    ['pack_capacity', '0.75..0.9..1.0'],
  ],
  'data-sheet': [
    ['stall_effort', '1 ±10%'],
    ['no_load_speed', '1 ±10%'],
    ['current', '1 ±15%'],
    ['mass', '1 ±2%'],
    ['pack_capacity', '0.92..0.97..1.0'],
  ],
  measured: [
    ['stall_effort', '1 ±5%'],
    ['no_load_speed', '1 ±3%'],
    ['current', '1 ±5%'],
    ['mass', '1 ±1%'],
    ['pack_capacity', '1 ±3%'],
  ],
  feature: [
    ['mass', '1 ±5%'],
    ['balance_distance', '1 ±5%'],
    ['tip_distance', '1 ±5%'],
    ['tip_scale', '1 ±5%'],
    ['inertia', '1 ±15%'],
  ],
};

const spreadBasis: Record<keyof typeof spreadTable, string> = {
  listing: `listings flatter; ${fromExperience}`,
  'data-sheet': fromExperience,
  measured: `care with simple instruments; ${fromExperience}`,
  feature: `kitchen scale and ruler; ${fromExperience}`,
};

/** Rows about the spread of figures that state none: factors on the figure. */
export function spreadAssumptions(): AssumptionRow[] {
  return Object.entries(spreadTable).flatMap(([name, rows]) =>
    rows.map(([item, factors]) =>
      row('spread', name, item, 'ratio', factors, spreadBasis[name as keyof typeof spreadTable]),
    ),
  );
}
