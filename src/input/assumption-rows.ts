import { studyFields } from '../study/fields.js';
import { dayFields, showFields } from '../study/show-fields.js';
import { loadFields, packFields } from '../study/supply-fields.js';
import { type AssumptionRow, fieldRows, row, wordRow } from './assumption-row.js';
import { criteriaAssumptions } from './criteria-assumptions.js';
import { driveAssumptions } from './drive-assumptions.js';
import { chemistryAssumptions, spreadAssumptions } from './supply-assumptions.js';

const activities = ['stand', 'walk', 'brisk', 'dance', 'jump'];

/** Defaults of study.csv that a rule chooses between. */
function ruledItems(): AssumptionRow[] {
  return [
    wordRow('study', 'any', 'carrier.activity_worn', activities, 'walk', 'when worn'),
    wordRow('study', 'any', 'carrier.activity_standing', activities, 'stand', 'when not worn'),
    row(
      'study',
      'any',
      'air.gust_on_worn_panel',
      'speed',
      '6 m/s',
      'worn, with a panel area: small branches move',
    ),
    row('study', 'any', 'air.gust_otherwise', 'speed', '0 m/s', 'not worn, or no panel area'),
    row(
      'study',
      'any',
      'air.temperature_worn_and_buried',
      'temperature',
      '35 °C',
      'warmed by the body under foam',
    ),
    row('study', 'any', 'air.temperature_otherwise', 'temperature', '25 °C', 'a mild room or evening'),
  ];
}

/** Defaults of study.csv items; those that differ between hinge and slide are listed under each. */
function studyRows(): AssumptionRow[] {
  const hinge = fieldRows('study', 'hinge', studyFields('hinge'));
  const slide = fieldRows('study', 'slide', studyFields('slide'));
  const same = (a: AssumptionRow, rows: AssumptionRow[]) =>
    rows.some((b) => b.item === a.item && b.value === a.value);
  return [
    ...hinge.filter((entry) => same(entry, slide)).map((entry) => ({ ...entry, name: 'any' })),
    ...hinge.filter((entry) => !same(entry, slide)),
    ...slide.filter((entry) => !same(entry, hinge)),
    ...ruledItems(),
  ];
}

let rows: readonly AssumptionRow[] | null = null;

/** Every row of the table of assumptions as it ships, in the order of the file. */
export function assumptionRows(): readonly AssumptionRow[] {
  rows ??= [
    ...driveAssumptions(),
    ...spreadAssumptions(),
    ...chemistryAssumptions(),
    row('pack', 'any', 'warning_above_cut_off', 'voltage', '0.2 V', 'per cell above the cut-off'),
    ...fieldRows('pack', 'any', packFields),
    ...fieldRows('load', 'any', loadFields),
    ...studyRows(),
    ...fieldRows('cue', 'any', showFields('hinge')),
    ...fieldRows('day', 'any', dayFields),
    row('measured', 'any', 'spread', 'ratio', '5 %', 'of the reading, when it states none'),
    ...criteriaAssumptions(),
  ];
  return rows;
}

/** How a row is found: `drive/worm-gearmotor/idle_current`. */
export function assumptionKey(group: string, name: string, item: string): string {
  return `${group}/${name}/${item}`;
}
