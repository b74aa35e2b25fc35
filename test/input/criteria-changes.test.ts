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
});
