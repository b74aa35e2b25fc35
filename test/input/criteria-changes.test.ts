import { describe, expect, it } from 'vitest';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import { demoFiles } from '../app/demo.js';

const read = (changes: string[], without = '') =>
  readStudy(
    demoFiles('lantern-parade').filter(({ name }) => name !== without),
    readAssumptions(),
    changes,
  );

function criterion(id: string, changes: string[], without = '') {
  const result = read(changes, without);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value.criteria.find((one) => one.id === id)!;
}

describe('trying other weights and limits', () => {
  it.each([
    ['none', 0],
    ['little', 1],
    ['some', 2],
    ['much', 4],
    ['decisive', 8],
    ['2.5', 2.5],
  ])('a weight may be %s', (written, weightScore) => {
    expect(criterion('cost', [`cost.weight=${written}`])).toMatchObject({ weightScore, worthless: 150 });
  });

  it('a criterion that had no row gets a fixed scale with its weight', () => {
    expect(criterion('noise', ['noise.weight=much'])).toMatchObject({ weightScore: 4, must: null });
    expect(criterion('noise', ['noise.weight=much']).worthless).not.toBeNull();
  });

  it('a limit is dropped by a blank, and set as in the file', () => {
    expect(criterion('cost', ['cost.must=']).must).toBeNull();
    expect(criterion('cost', ['cost.must=at most 90']).must).toEqual({ direction: 'at-most', bound: 90 });
  });

  it('works where there is no criteria.csv', () => {
    expect(criterion('cost', ['cost.weight=decisive'], 'criteria.csv').weightScore).toBe(8);
    expect(criterion('torque_margin', ['torque_margin.must='], 'criteria.csv')).toMatchObject({
      must: null,
      origin: 'given',
    });
  });

  it('a word that is no weight is named with those there are', () => {
    const { issues } = read(['cost.weight=loads']);
    expect(issues).toMatchObject([{ file: '--set', column: 'cost.weight', received: 'loads' }]);
    expect(issues[0]!.expected).toBe('a number or one of none, little, some, much, decisive');
  });

  it.each([
    ['noise.must=', 'no-limit-to-drop'],
    ['voltage.must=', 'limit-always-holds'],
  ])('%s changes nothing, and that is said', (change, code) => {
    const { ok, issues } = read([change]);
    expect(ok).toBe(true);
    expect(issues.filter(({ file }) => file === '--set')).toMatchObject([{ code, severity: 'warning' }]);
  });

  it.each([
    ['candidates.servo-now.mass=1 kg', 'did you mean servo-now.mass?'],
    ['study.feature.mass=1 kg', 'did you mean feature.mass?'],
    ['criteria.noise.weight=2', 'did you mean noise.weight?'],
    ['nois.weight=2', 'did you mean noise.weight?'],
  ])('%s is told the name that was meant', (change, hint) => {
    expect(read([change]).issues.filter(({ file }) => file === '--set')).toMatchObject([{ hint }]);
  });

  it('what was tried stays with the study, from what to what', () => {
    const result = read([
      'feature.mass=700 g',
      'servo-now.mass=200 g',
      'cost.must=at most 90',
      'cost.weight=8',
    ]);
    if (!result.ok) throw new Error('has errors');
    expect(result.value.tried).toEqual([
      { item: 'feature.mass', from: '860 g ±25 g', to: '700 g' },
      { item: 'servo-now.mass', from: '158 g', to: '200 g' },
      { item: 'cost.must', from: 'at most 150', to: 'at most 90' },
      { item: 'cost.weight', from: '1', to: '8' },
    ]);
    const asItStands = read([]);
    expect(asItStands.ok && asItStands.value.tried).toBeUndefined();
  });
});
