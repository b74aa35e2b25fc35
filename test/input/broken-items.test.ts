import { describe, it } from 'vitest';
import { expectIssue } from './expect-issue.js';
import { type BrokenCase, edited, type Files, goodFiles, withFile } from './good-study.js';

const study = goodFiles['study.csv'] as string;
/** The good study with more rows in study.csv; the first of them stands in line 13. */
const added = (...rows: string[]): Files => withFile('study.csv', `${study}${rows.join('\n')}\n`);
const at = (line: number | null, column: string | null) => ({ file: 'study.csv', line, column });

const cases: BrokenCase[] = [
  {
    title: 'a misspelt item',
    files: added('feature.panel_are,0.1 m²,,'),
    code: 'unknown-item',
    ...at(13, 'feature.panel_are'),
    hint: 'feature.panel_area',
  },
  {
    title: 'an item near nothing',
    files: added('weather,fine,,'),
    code: 'unknown-item',
    ...at(13, 'weather'),
    hint: 'delete the row',
  },
  {
    title: 'an item twice',
    files: added('feature.mass,600 g,,'),
    code: 'duplicate-item',
    ...at(13, 'feature.mass'),
    hint: 'delete one',
  },
  {
    title: 'a missing required item',
    files: edited('study.csv', 'feature.mass,500 g,,\n', ''),
    code: 'blank-required',
    ...at(null, 'feature.mass'),
    hint: 'kitchen scale',
  },
  {
    title: 'a required item left blank',
    files: edited('study.csv', '500 g', ''),
    code: 'blank-required',
    ...at(null, 'feature.mass'),
    hint: 'kitchen scale',
  },
  {
    title: 'a word that is no choice',
    files: added('carrier.activity,dancing,,'),
    code: 'unknown-choice',
    ...at(13, 'carrier.activity'),
    hint: 'did you mean dance?',
  },
  {
    title: 'neither yes nor no',
    files: edited('study.csv', 'worn,yes', 'worn,perhaps'),
    code: 'unknown-choice',
    ...at(9, 'carrier.worn'),
    hint: 'yes or no',
  },
  {
    title: 'a date that reads in two ways',
    files: added('date,03/04/2026,,'),
    code: 'not-a-date',
    ...at(13, 'date'),
    hint: '2026-03-14',
  },
  {
    title: 'a day that does not exist',
    files: added('date,2026-02-30,,'),
    code: 'not-a-date',
    ...at(13, 'date'),
    hint: 'year-month-day',
  },
  {
    title: 'stops the wrong way round',
    files: edited('study.csv', 'upper_stop,60', 'upper_stop,-40'),
    code: 'stops-reversed',
    ...at(8, 'feature.upper_stop'),
    hint: 'up is positive',
    others: ['beyond-stop'],
  },
  {
    title: 'a latch outside the stops',
    files: added('feature.latch,70 deg,,'),
    code: 'latch-outside-stops',
    ...at(13, 'feature.latch'),
    hint: 'sign',
  },
  {
    title: 'a hinge item on a slide',
    files: withFile('study.csv', study.replace('feature.mass', 'feature.kind,slide,,\nfeature.mass')),
    code: 'not-applicable',
    ...at(6, 'feature.balance_distance'),
    hint: 'empty the cell',
    others: ['not-applicable', 'blank-required'],
  },
  {
    title: 'a slide item on a hinge',
    files: added('feature.incline,45 deg,,'),
    code: 'not-applicable',
    ...at(13, 'feature.incline'),
    hint: 'empty the cell',
  },
  {
    title: 'a balance point beyond the tip',
    files: edited('study.csv', '200 mm', '600 mm'),
    code: 'balance-beyond-tip',
    severity: 'warning',
    ...at(5, 'feature.balance_distance'),
    hint: 'swapped',
  },
  {
    title: 'a scale that contradicts mass and distance',
    files: added('feature.tip_scale,400 g,,'),
    code: 'scale-disagrees',
    severity: 'warning',
    ...at(13, 'feature.tip_scale'),
    hint: 'measure all three',
  },
  {
    title: 'inertia and shape together',
    files: added('feature.inertia,0.03 kg·m²,,', 'feature.shape,rod,,'),
    code: 'shape-not-used',
    severity: 'warning',
    ...at(14, 'feature.shape'),
    hint: 'delete one',
  },
  {
    title: 'two forms of spring',
    files: added('spring.constant,0.5 N·m,,', 'spring.stiffness,0.5 N·m/rad,,', 'spring.free_angle,60 deg,,'),
    code: 'springs-mixed',
    ...at(14, 'spring.stiffness'),
    hint: 'stiffness and free_angle',
  },
  {
    title: 'a spring with a part missing',
    files: added('spring.rate,0.5 N/mm,,', 'spring.frame_arm,80 mm,,'),
    code: 'spring-incomplete',
    ...at(13, 'spring.rate'),
    hint: 'complete the spring',
  },
  {
    title: 'a trip delay without a trip current',
    files: added('protection.delay,20 ms,,'),
    code: 'part-without-whole',
    ...at(13, 'protection.delay'),
    hint: 'protection.trip',
  },
  {
    title: 'a bare wire size',
    files: added('wire.gauge,18,,'),
    code: 'missing-unit',
    ...at(13, 'wire.gauge'),
    hint: '18 AWG or 18 mm²',
  },
  {
    title: 'a unit column of another dimension',
    files: added('feature.panel_area,3,mm,'),
    code: 'unit-of-another-dimension',
    ...at(13, 'feature.panel_area'),
    hint: 'mm²',
  },
  {
    title: 'a unit beside a word',
    files: added('air.buried,no,deg,'),
    code: 'unit-ignored',
    severity: 'warning',
    ...at(13, 'air.buried'),
    hint: 'empty the unit',
  },
  {
    title: 'a pack that is not there',
    files: edited('study.csv', 'choice,pack-a', 'choice,pack-b'),
    code: 'unknown-reference',
    ...at(10, 'pack.choice'),
    hint: 'did you mean pack-a?',
  },
  {
    title: 'a baseline that is not there',
    files: edited('study.csv', 'baseline,servo-a', 'baseline,nothing'),
    code: 'unknown-reference',
    ...at(11, 'baseline'),
    hint: 'servo-a, worm-a or screw-a',
  },
  {
    title: 'a fuse in volts',
    files: added('fuse.rating,5 V,,'),
    code: 'unit-of-another-dimension',
    ...at(13, 'fuse.rating'),
    hint: 'mA',
  },
  {
    title: 'far too many draws',
    files: added('draws,1000000,,'),
    code: 'out-of-bounds',
    ...at(13, 'draws'),
    hint: 'check',
  },
];

describe('a broken item of study.csv is named', () => {
  it.each(cases)('$title', expectIssue);
});
