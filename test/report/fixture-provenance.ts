import type { Provenance } from '../../src/study/provenance.js';

type Line = [field: string, written: string | null, shown: string, basis?: string];

const studyLines: Record<string, Line[]> = {
  about: [['question', "Should the heron's neck keep its servo?", "Should the heron's neck keep its servo?"]],
  feature: [
    ['feature.mass', '860 g ±25 g', '860 g'],
    ['feature.balance_distance', '26.5 cm ±1 cm', '265 mm'],
    ['feature.tip_distance', '71 cm', '710 mm'],
    ['feature.inertia', null, '0.0803 kg·m²', '1.33 × mass × balance distance², from experience'],
    ['feature.lower_stop', '-40', '−40°'],
    ['feature.upper_stop', '68', '68°'],
  ],
  carrier: [['carrier.worn', 'yes', 'yes']],
  wiring: [
    ['wire.gauge', '20 AWG', '0.518 mm²'],
    ['wire.connector_resistance', null, '2 mΩ', 'a common value for two soldered pairs'],
  ],
  packs: [
    ['capacity', '1300 mAh', '1300 mAh'],
    ['cell_resistance', null, '46.2 mΩ', 'from the C label: 600 mΩ·Ah divided by 25 and the capacity'],
  ],
};

const sheetLines: Line[] = [
  ['rated_voltage', '7.4 V', '7.4 V'],
  ['no_load_speed', '0.24 s/60deg', '4.36 rad/s'],
  ['no_load_current', '300 mA', '0.3 A'],
  ['stall_torque', '65 kg·cm', '6.37 N·m'],
  ['stall_current', '5.8 A', '5.8 A'],
  ['idle_current', null, '10 mA', 'from experience, no source: sampled from 4 to 30 mA'],
  ['mass', '158 g', '158 g'],
  ['price', '46', '46'],
  ['length', '66 mm', '66 mm'],
  ['width', '30 mm', '30 mm'],
  ['height', '58 mm', '58 mm'],
  ['winding_limit', null, '100 °C', 'common insulation of small motors'],
];

function entry(path: string, owner: string | null, line: Line, number: number, file: string): Provenance {
  const [field, written, shown, basis = ''] = line;
  return {
    path,
    field,
    owner,
    origin: written === null ? 'assumed' : 'given',
    written,
    shown,
    value: null,
    basis,
    spread: null,
    place: written === null ? null : { file, line: number, column: field },
  };
}

/** The history of enough figures to fill several pages. */
export function createProvenance(candidates: string[]): Provenance[] {
  const study = Object.entries(studyLines).flatMap(([group, lines]) =>
    lines.map((line, index) =>
      entry(`${group}.${line[0]}`, group === 'packs' ? 'P-2S-13' : null, line, index + 2, 'study.csv'),
    ),
  );
  const sheets = candidates.flatMap((id, row) =>
    sheetLines.map((line) => entry(`candidates.${id}.sheet.${line[0]}`, id, line, row + 2, 'candidates.csv')),
  );
  return [...study, ...sheets];
}
