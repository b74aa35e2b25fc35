import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { pointsOfViewFile, readPointsOfView } from '../../src/input/read-points-of-view.js';
import type { Criterion } from '../../src/study/choosing.js';

const shipped = readFileSync(new URL(`../../templates/${pointsOfViewFile}`, import.meta.url), 'utf8');
const own: Criterion = {
  id: 'runtime',
  weightScore: 4,
  worthless: 600,
  worthFull: 6000,
  must: null,
  origin: 'given',
  note: '',
};

const read = (text: string, criteria: Criterion[] = []) =>
  readPointsOfView({ [pointsOfViewFile]: text }, { criteria, targetRuntimeS: 7200 }, readAssumptions());

describe('other points of view', () => {
  it('are four as they ship, each with weights and scales', () => {
    const { views, issues } = read(shipped);
    expect(issues).toEqual([]);
    expect(views.map(({ id }) => id)).toEqual(['wearer', 'builder', 'organiser', 'purse']);
    for (const { criteria } of views) {
      expect(criteria.length).toBeGreaterThan(2);
      expect(criteria.every(({ worthless, worthFull }) => worthless !== worthFull)).toBe(true);
    }
  });

  it('take the scales of the study where it has them, and fixed ones where not', () => {
    const text = 'view,label,criterion,weight\nme,me,runtime,2\nme,me,noise,1\n';
    const [view] = read(text, [own]).views;
    expect(view!.criteria[0]).toMatchObject({
      id: 'runtime',
      weightScore: 2,
      worthless: 600,
      worthFull: 6000,
    });
    expect(view!.criteria[1]).toMatchObject({ id: 'noise', worthless: 70, worthFull: 35 });
  });

  it('are none without the table, and none in an empty one', () => {
    expect(readPointsOfView({}, { criteria: [], targetRuntimeS: null }, readAssumptions())).toEqual({
      views: [],
      issues: [],
    });
    expect(read('view,label,criterion,weight\n').views).toEqual([]);
  });

  it.each([
    ['a criterion nobody knows', 'me,me,runtim,1', 'criterion'],
    ['one that is met or not', 'me,me,fits,1', 'criterion'],
    ['one that is there twice', 'me,me,runtime,1\nme,me,runtime,2', 'criterion'],
    ['a weight below nothing', 'me,me,runtime,-1', 'weight'],
  ])('name %s with its place', (_what, rows, column) => {
    const { issues } = read(`view,label,criterion,weight\n${rows}\n`);
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ severity: 'error', file: pointsOfViewFile, column });
  });
});
