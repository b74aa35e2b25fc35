import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { blanksOf, blankWords } from '../../src/assess/blanks.js';
import { leaveOutBlanks, viewsWithoutBlanks } from '../../src/assess/left-out.js';
import { candidate, criterion, run, study } from './hand-made.js';

const criteria = [criterion('runtime', 3, [0, 12000]), criterion('cost', 1, [100, 0])];
const context = { version: '0', inputHash: '', inputs: [] };
const drives = [candidate('now'), candidate('other', { priceMoney: null })];
const both = study(drives, criteria, { baselineId: 'now' });
const runs = [run('now', { cost: 0 }), run('other', { cost: null })];
/** It stands still where it should move. */
const cannotMove = {
  code: 'moves',
  position: 0,
  reason: 'it stands still',
  value: null,
  limit: null,
} as const;
const cost = (of: ReturnType<typeof leaveOutBlanks>) => of.criteria.find(({ id }) => id === 'cost')!;

describe('a price that only one candidate lacks', () => {
  it('takes cost out of the score of every candidate', () => {
    const { candidates } = assess(both, runs, context);
    const [first, second] = candidates;
    expect(first!.score).toBeCloseTo(second!.score, 12);
    expect(candidates.flatMap((one) => one.criteria.map((outcome) => outcome.criterion))).toEqual([
      'runtime',
      'runtime',
    ]);
  });

  it('leaves its weight on record, and counts again once it is filled in', () => {
    const without = leaveOutBlanks(both, runs);
    expect(cost(without)).toMatchObject({
      weightScore: 0,
      leftOut: { weightScore: 1, blanks: [{ candidate: 'other', field: 'price' }] },
    });
    const filled = leaveOutBlanks(without, [runs[0]!, run('other', { cost: 40 })]);
    expect(cost(filled)).toEqual(cost(both));
  });

  it('is named as what to fill in', () => {
    expect(blanksOf(assess(both, runs, context)).map(blankWords)).toEqual([
      expect.stringMatching(
        /^price of other: .* while it is blank, the score leaves out cost for every candidate$/,
      ),
    ]);
  });

  it('counts for the others where the one that lacks it cannot do the job', () => {
    const stuck = run('other', { cost: null }, { failures: [cannotMove] });
    expect(cost(leaveOutBlanks(both, [runs[0]!, stuck]))).toEqual(cost(both));
    const allStuck = [run('now', { cost: 0 }, { failures: [cannotMove] }), stuck];
    expect(cost(leaveOutBlanks(both, allStuck)).weightScore).toBe(0);
  });

  it('takes it out of the weights of others too', () => {
    const view = (id: string, ...counted: typeof criteria) => ({ id, label: id, criteria: counted });
    const views = [view('runs', ...criteria), view('pays', criteria[1]!)];
    const left = viewsWithoutBlanks(views, both, runs);
    expect(left.map(({ id, criteria: counts }) => [id, counts.length])).toEqual([['runs', 1]]);
  });
});

describe('a figure that a drive does not reach', () => {
  it('is worth nothing for that drive, and counts for the others', () => {
    const stuck = run('other', { runtimeS: null, cost: 40 });
    const { candidates, study: counted } = assess(both, [runs[0]!, stuck], context);
    expect(counted.criteria.every(({ leftOut }) => leftOut === undefined)).toBe(true);
    const outcome = candidates.find(({ id }) => id === 'other')!.criteria[0];
    expect(outcome).toMatchObject({ criterion: 'runtime', worthScore: 0 });
  });

  it('a case that never settles fails its limit, whatever its mass', () => {
    const limit = criterion('case_temperature', 0, null, { direction: 'at-most', bound: 330 });
    const hot = run('now', { caseTemperatureK: null, windingTemperatureK: null, thermalRunaway: true });
    const { candidates } = assess(study([drives[0]!], [limit]), [hot], context);
    expect(candidates[0]!.limits.find((one) => one.criterion === 'case_temperature')).toMatchObject({
      passes: false,
      reason: 'the winding never settles',
    });
  });
});
