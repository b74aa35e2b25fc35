import { describe, it } from 'vitest';
import { expectIssue } from './expect-issue.js';
import { type BrokenCase, edited, goodFiles, withFile } from './good-study.js';

const place = (file: string, line: number | null, column: string | null) => ({ file, line, column });
const packs = goodFiles['packs.csv'] as string;

const cases: BrokenCase[] = [
  {
    title: 'an undeclared column near a declared one',
    files: edited('packs.csv', ',mass', ',mas'),
    code: 'unknown-column',
    ...place('packs.csv', 1, 'mas'),
    hint: 'did you mean mass?',
  },
  {
    title: 'an undeclared column near nothing',
    files: edited('packs.csv', ',mass', ',colour'),
    code: 'unknown-column',
    ...place('packs.csv', 1, 'colour'),
    hint: 'my_',
  },
  {
    title: 'a column named after the inside of the language',
    files: edited('packs.csv', ',mass', ',__proto__'),
    code: 'unknown-column',
    ...place('packs.csv', 1, '__proto__'),
    hint: 'my_',
  },
  {
    title: 'a unit in round brackets in the header',
    files: edited('packs.csv', 'capacity,', 'capacity (mAh),'),
    code: 'unknown-column',
    ...place('packs.csv', 1, 'capacity (mAh)'),
    hint: 'did you mean capacity?',
  },
  {
    title: 'a missing column that every row needs',
    files: withFile('packs.csv', packs.replaceAll('lipo,', '').replace('chemistry,', '')),
    code: 'missing-column',
    ...place('packs.csv', 1, 'chemistry'),
    hint: 'add chemistry',
  },
  {
    title: 'the same column twice',
    files: edited('packs.csv', ',mass', ',label'),
    code: 'duplicate-column',
    ...place('packs.csv', 1, 'label'),
    hint: 'my_',
  },
  {
    title: 'a value below a nameless column',
    files: withFile('packs.csv', packs.replace(',mass', ',mass,').replace('120 g', '120 g,yes')),
    code: 'column-without-name',
    ...place('packs.csv', 2, null),
    hint: 'name the column',
  },
  {
    title: 'a comma inside a label that is not quoted',
    files: edited('packs.csv', '120 g', '120 g,old'),
    code: 'row-too-long',
    ...place('packs.csv', 2, null),
    hint: 'Put the text in quotes',
  },
  {
    title: 'an unquoted decimal comma in a comma file',
    files: edited('packs.csv', '120 g', '0,12 kg'),
    code: 'row-too-long',
    ...place('packs.csv', 2, null),
    hint: 'decimals with a point',
  },
  {
    title: 'a column taken out of the header only, which shifts every cell after it',
    files: edited('packs.csv', ',chemistry', ''),
    code: 'missing-column',
    ...place('packs.csv', 1, 'chemistry'),
    hint: 'add chemistry',
    others: ['row-too-long'],
  },
  {
    title: 'a unit in the header that nobody knows',
    files: edited('packs.csv', 'capacity', 'capacity [furlong]', edited('packs.csv', '2200 mAh', '2200')),
    code: 'unknown-unit',
    ...place('packs.csv', 1, 'capacity [furlong]'),
    hint: 'brackets',
  },
  {
    title: 'a unit of another dimension in the header',
    files: edited('packs.csv', 'capacity', 'capacity [mA]', edited('packs.csv', '2200 mAh', '2200')),
    code: 'unit-of-another-dimension',
    ...place('packs.csv', 1, 'capacity [mA]'),
    hint: 'mAh',
  },
  {
    title: 'the same pack id twice',
    files: withFile('packs.csv', `${packs}pack-a,again,lipo,3,1 Ah,90 g\n`),
    code: 'duplicate-id',
    ...place('packs.csv', 3, 'id'),
    hint: 'another id',
  },
  {
    title: 'the same candidate twice at the same voltage',
    files: edited('candidates.csv', 'worm-a,worm-gearmotor,12 V', 'servo-a,position-servo,7.4 V'),
    code: 'duplicate-id',
    ...place('candidates.csv', 3, 'id'),
    hint: 'another id',
  },
  {
    title: 'an id that flags cannot hold',
    files: edited('candidates.csv', 'worm-a', 'worm a.2'),
    code: 'bad-name',
    ...place('candidates.csv', 3, 'id'),
    hint: 'write worm-a-2',
  },
  {
    title: 'a row that a failed formula has turned into a comment',
    files: withFile('packs.csv', `${packs}#REF!,x,lipo,2,1 Ah,90 g\n`),
    code: 'spreadsheet-error',
    ...place('packs.csv', 3, null),
    hint: 'mend the formula',
  },
  {
    title: 'a study.csv without its value column',
    files: edited('study.csv', 'item,value', 'item,worth'),
    code: 'missing-column',
    ...place('study.csv', 1, 'value'),
    hint: 'add value',
    others: ['unknown-column'],
  },
  {
    title: 'a value without an item',
    files: edited('study.csv', 'target.runtime,90', ',90'),
    code: 'value-without-item',
    ...place('study.csv', 12, 'item'),
    hint: 'first column',
  },
];

describe('a broken table is named with its line and column', () => {
  it.each(cases)('$title', expectIssue);
});
