import { describe, expect, it } from 'vitest';
import { assumptionRows } from '../../src/input/assumption-rows.js';
import { assumptionsTemplate } from '../../src/input/assumptions-template.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { goodFiles, readFiles } from './good-study.js';

const template = assumptionsTemplate();
const edited = (from: string, to: string) => {
  expect(template).toContain(from);
  return readAssumptions({ 'assumptions.csv': template.replace(from, to) });
};

describe('the table of assumptions', () => {
  it('reads as it ships, without a word', () => {
    const { issues, of } = readAssumptions({ 'assumptions.csv': template });
    expect(issues).toEqual([]);
    for (const { group, name, item, value, basis } of assumptionRows())
      expect(of(group, name, item)).toMatchObject({ written: value, basis });
  });

  it('has every row once', () => {
    const keys = assumptionRows().map(({ group, name, item }) => `${group}/${name}/${item}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('changes studies when it is edited, with the basis that was written', () => {
    const assumptions = edited(
      'idle_current,4..10..30 mA,"servo electronics; from experience, no published source"',
      'idle_current,20 mA,our bench',
    );
    const result = readFiles(goodFiles, [], assumptions);
    if (!result.ok) throw new Error('errors');
    expect(result.value.candidates[0]!.sheet.idleCurrentA).toBe(0.02);
    const history = result.value.provenance.find(
      ({ path }) => path === 'candidates.servo-a.sheet.idleCurrentA',
    );
    expect(history).toMatchObject({ origin: 'assumed', basis: 'our bench', spread: null });
  });

  it.each([
    [
      'a value of another dimension',
      'idle_current,4..10..30 mA',
      'idle_current,10 mAh',
      'unit-of-another-dimension',
      'value',
    ],
    ['a blank value', 'idle_current,4..10..30 mA', 'idle_current,', 'blank-required', 'value'],
    [
      'a misspelt item',
      'position-servo,idle_current,',
      'position-servo,idle_curent,',
      'unknown-assumption',
      'item',
    ],
  ])('names %s with its place, and a study reports it too', (_title, from, to, code, column) => {
    const assumptions = edited(from, to);
    const line = template.slice(0, template.indexOf(from)).split('\n').length;
    expect(assumptions.issues).toContainEqual(
      expect.objectContaining({ code, file: 'assumptions.csv', line, column }),
    );
    const result = readFiles(goodFiles, [], assumptions);
    expect(result.ok).toBe(false);
    expect(result.issues[0]!.file).toBe('assumptions.csv');
  });

  it('takes a row that was deleted as it shipped, and says so', () => {
    const { issues, of } = edited('measured,any,spread,5 %,"of the reading, when it states none"\n', '');
    expect(issues).toEqual([expect.objectContaining({ code: 'missing-assumption', severity: 'warning' })]);
    expect(of('measured', 'any', 'spread').value).toBe(0.05);
  });

  it('names a row that is there twice', () => {
    const row = 'measured,any,spread,5 %,"of the reading, when it states none"\n';
    expect(edited(row, row + row).issues).toEqual([expect.objectContaining({ code: 'assumption-twice' })]);
  });
});
