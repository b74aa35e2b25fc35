import { describe, expect, it } from 'vitest';
import { expectIssue } from './expect-issue.js';
import { type BrokenCase, edited, type Files, goodFiles, issuesIn, withFile } from './good-study.js';

/** The good study with criteria; the first stands in line 2. */
const criteria = (...rows: string[]): Files =>
  withFile('criteria.csv', `criterion,weight,worth_0_at,worth_1_at,must,note\n${rows.join('\n')}\n`);
const measured = (...rows: string[]): Files =>
  withFile('measured.csv', `quantity,value,unit\n${rows.join('\n')}\n`);
const at = (line: number | null, column: string | null) => ({ file: 'criteria.csv', line, column });
const set = (column: string | null) => ({ file: '--set', line: null, column });

const cases: BrokenCase[] = [
  {
    title: 'an unknown criterion',
    files: criteria('run_time,4,,,', 'cost,1,,,'),
    code: 'unknown-choice',
    ...at(2, 'criterion'),
    hint: 'did you mean runtime?',
  },
  {
    title: 'a criterion twice',
    files: criteria('cost,4,,,', 'cost,1,,,'),
    code: 'duplicate-id',
    ...at(3, 'criterion'),
    hint: 'delete one',
  },
  {
    title: 'half a scale',
    files: criteria('cost,4,200,,'),
    code: 'worth-incomplete',
    ...at(2, 'worth_1_at'),
    hint: 'or neither',
  },
  {
    title: 'a scale without length',
    files: criteria('cost,4,200,200,'),
    code: 'worth-flat',
    ...at(2, 'worth_1_at'),
    hint: 'two different',
  },
  {
    title: 'a scale on which the worse is worth more',
    files: criteria('body_mass,4,200 g,600 g,'),
    code: 'worth-against-direction',
    severity: 'warning',
    ...at(2, 'worth_1_at'),
    hint: 'exchanged',
  },
  {
    title: 'a scale of another dimension',
    files: criteria('body_mass,4,2 N,0 kg,'),
    code: 'unit-of-another-dimension',
    ...at(2, 'worth_0_at'),
    hint: 'kg',
  },
  {
    title: 'a bare limit',
    files: criteria('runtime,4,,,40 min'),
    code: 'limit-direction-taken',
    severity: 'warning',
    ...at(2, 'must'),
    hint: 'write at least 40 min',
  },
  {
    title: 'a limit on the better side',
    files: criteria('runtime,4,,,at most 40 min'),
    code: 'limit-against-direction',
    severity: 'warning',
    ...at(2, 'must'),
    hint: 'at least 40 min',
  },
  {
    title: 'a number on a yes-or-no criterion',
    files: criteria('runtime,4,,,', 'fits,0,,,40 mm'),
    code: 'unknown-choice',
    ...at(3, 'must'),
    hint: 'write yes',
  },
  {
    title: 'a limit without its unit',
    files: criteria('body_mass,4,,,at most 2'),
    code: 'missing-unit',
    ...at(2, 'must'),
    hint: '2 g, 2 kg or 2 oz',
  },
  {
    title: 'a criterion that counts for nothing',
    files: criteria('runtime,4,,,', 'cost,,,,'),
    code: 'counts-for-nothing',
    severity: 'warning',
    ...at(3, 'weight'),
    hint: 'delete the row',
  },
  {
    title: 'no weight anywhere',
    files: criteria('runtime,0,,,at least 40 min'),
    code: 'no-weight',
    ...at(null, 'weight'),
    hint: 'give the criteria weights',
  },
  {
    title: 'a negative weight',
    files: criteria('runtime,-4,,,', 'cost,1,,,'),
    code: 'out-of-bounds',
    ...at(2, 'weight'),
    hint: 'check',
  },
  {
    title: 'a measurement without a baseline',
    files: edited('study.csv', 'baseline,servo-a,,\n', '', measured('runtime,80 min,')),
    code: 'measured-without-baseline',
    file: 'measured.csv',
    line: null,
    column: null,
    hint: 'set baseline',
  },
  {
    title: 'a measurement of nothing known',
    files: measured('runtimes,80 min,'),
    code: 'unknown-choice',
    file: 'measured.csv',
    line: 2,
    column: 'quantity',
    hint: 'did you mean runtime?',
  },
  {
    title: 'a measured current in hours',
    files: measured('hold_current,600 mAh,'),
    code: 'unit-of-another-dimension',
    file: 'measured.csv',
    line: 2,
    column: 'value',
    hint: 'mA',
  },
  {
    title: 'a quantity measured twice',
    files: measured('runtime,80 min,', 'runtime,82 min,'),
    code: 'duplicate-id',
    file: 'measured.csv',
    line: 3,
    column: 'quantity',
    hint: 'another id',
  },
  {
    title: 'a change without an equals sign',
    files: goodFiles,
    changes: ['feature.mass'],
    code: 'bad-change',
    ...set(null),
    hint: 'feature.mass=420 g',
  },
  {
    title: 'a change of nothing known',
    files: goodFiles,
    changes: ['worm-a.mas=300 g'],
    code: 'unknown-change',
    ...set('worm-a.mas'),
    hint: 'did you mean worm-a.mass?',
  },
  {
    title: 'a change without its unit',
    files: goodFiles,
    changes: ['worm-a.mass=300'],
    code: 'missing-unit',
    ...set('worm-a.mass'),
    hint: '300 g',
  },
  {
    title: 'a change to another dimension',
    files: goodFiles,
    changes: ['feature.mass=5 N'],
    code: 'unit-of-another-dimension',
    ...set('feature.mass'),
    hint: 'kg',
  },
  {
    title: 'a change to a pack that is not there',
    files: goodFiles,
    changes: ['pack.choice=pack-c'],
    code: 'unknown-reference',
    ...set('pack.choice'),
    hint: 'did you mean pack-a?',
  },
];

describe('a broken criterion, measurement or change is named', () => {
  it.each(cases)('$title', expectIssue);

  it('takes bare limits and scales of criteria whose habit is known', () => {
    expect(
      issuesIn(criteria('rework_hours,2,24,0,', 'swap_minutes,1,30,0,at most 20', 'cost,1,200,0,')),
    ).toEqual([]);
  });
});
