import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { compareForRank, nonDominatedIds } from '../../src/assess/ranking.js';
import { criterionOutcomes, scoreOf, worthOf } from '../../src/assess/scores.js';
import { candidate, criterion, run, study } from './hand-made.js';

const context = { version: '0', inputHash: '', inputs: [] };

describe('worth on a fixed scale', () => {
  it.each([
    ['half way is worth a half', 90, 60, 120, 0.5],
    ['below the lower end is worth nothing', 30, 60, 120, 0],
    ['beyond the upper end is worth one', 500, 60, 120, 1],
    ['less is better where the ends are turned round', 0.3, 1.2, 0.3, 1],
    ['a quarter of the way down', 0.975, 1.2, 0.3, 0.25],
    ['equal ends make a step', 60, 60, 60, 1],
    ['under a step', 59, 60, 60, 0],
  ])('%s', (_, value, worthless, full, worth) => {
    expect(worthOf(value, worthless, full)).toBeCloseTo(worth, 12);
  });

  it('a score is the weighted sum over the sum of weights', () => {
    const criteria = [criterion('runtime', 3, [0, 12000]), criterion('cost', 1, [100, 0])];
    const one = candidate('a');
    const outcomes = criterionOutcomes({ study: study([one], criteria), candidate: one, run: run('a') });
    expect(outcomes.map(({ worthScore }) => worthScore)).toEqual([0.5, 0.5]);
    expect(scoreOf(outcomes)).toBeCloseTo(0.5, 12);
    expect(scoreOf([{ ...outcomes[0]!, worthScore: 1 }, outcomes[1]!])).toBeCloseTo(0.875, 12);
  });

  it('a missing figure counts as nothing and is named', () => {
    const one = candidate('a', { priceMoney: null });
    const criteria = [criterion('cost', 1, [100, 0])];
    const outcomes = criterionOutcomes({
      study: study([one], criteria),
      candidate: one,
      run: run('a', { cost: null }),
    });
    expect(outcomes[0]).toMatchObject({ value: null, worthScore: 0, missing: 'price' });
  });

  it('without weights the score is nothing', () => {
    expect(scoreOf([])).toBe(0);
  });
});

describe('rank', () => {
  it('passing comes before not judged, not judged before failing, whatever the score', () => {
    const entries = [
      { id: 'fails', passes: false, score: 0.9 },
      { id: 'open', passes: null, score: 0.8 },
      { id: 'weak', passes: true, score: 0.1 },
      { id: 'strong', passes: true, score: 0.7 },
    ];
    expect(entries.sort(compareForRank).map(({ id }) => id)).toEqual(['strong', 'weak', 'open', 'fails']);
  });

  it('equal scores stand in the order of their ids', () => {
    const entries = ['c', 'a', 'b'].map((id) => ({ id, passes: true, score: 0.5 }));
    expect(entries.sort(compareForRank).map(({ id }) => id)).toEqual(['a', 'b', 'c']);
  });
});

describe('non-dominated set', () => {
  const criteria = [criterion('runtime', 1, [0, 1]), criterion('cost', 1, [100, 0])];
  const figure = (criterion: 'runtime' | 'cost', value: number | null) => ({
    criterion,
    value,
    worthScore: 0,
    weightScore: 1,
    ...(value === null ? { missing: criterion } : {}),
  });
  const point = (id: string, runtime: number | null, cost: number | null, passes: boolean | null = true) => ({
    id,
    passes,
    criteria: [figure('runtime', runtime), figure('cost', cost)],
  });

  it('keeps whoever is best at something, and drops whoever is beaten everywhere', () => {
    const ids = nonDominatedIds(
      [point('long', 100, 50), point('cheap', 40, 10), point('neither', 40, 50)],
      criteria,
    );
    expect([...ids]).toEqual(['long', 'cheap']);
  });

  it('keeps both of two equals', () => {
    expect(nonDominatedIds([point('a', 50, 20), point('b', 50, 20)], criteria).size).toBe(2);
  });

  it('compares figures and not their worth, which is cut off at the ends of the scale', () => {
    expect([...nonDominatedIds([point('a', 500, 20), point('b', 400, 20)], criteria)]).toEqual(['a']);
  });

  it('a missing figure loses against any figure', () => {
    expect([...nonDominatedIds([point('a', 50, 20), point('b', 50, null)], criteria)]).toEqual(['a']);
  });

  it('whoever fails a hard limit neither belongs to it nor beats anybody', () => {
    expect([...nonDominatedIds([point('a', 50, 20), point('b', 90, 10, false)], criteria)]).toEqual(['a']);
  });
});

describe('an assessment', () => {
  const criteria = [criterion('runtime', 1, [0, 12000])];
  const of = (baselineId: string | null = 'now') =>
    assess(
      study(
        ['now', 'better', 'blind', 'broken'].map((id) => candidate(id)),
        criteria,
        { baselineId },
      ),
      [
        run('now', { runtimeS: 3000 }),
        run('better', { runtimeS: 9000 }),
        run('blind', { runtimeS: 12000, fits: null }),
        run('broken', { runtimeS: 12000, busVoltageV: 20 }),
      ],
      context,
    );

  it('ranks from one without gaps and names leader and baseline', () => {
    const { candidates, leader, baseline } = of();
    expect(candidates.map(({ id, rank }) => [id, rank])).toEqual([
      ['better', 1],
      ['now', 2],
      ['blind', 3],
      ['broken', 4],
    ]);
    expect([leader, baseline]).toEqual(['better', 'now']);
  });

  it('has no leader where nothing passes, even if something is merely not judged', () => {
    const result = assess(study([candidate('blind')], criteria), [run('blind', { fits: null })], context);
    expect(result.leader).toBeNull();
    expect(result.answer.sentence).toMatch(/No candidate is known to pass/);
  });

  it('says that the present drive stays where it leads', () => {
    const result = assess(
      study([candidate('now'), candidate('new')], criteria, { baselineId: 'now' }),
      [run('now', { runtimeS: 9000 }), run('new', { runtimeS: 6000 })],
      context,
    );
    expect(result.answer.sentence).toMatch(/^Keep now/);
    expect(result.answer.reasons.length).toBeGreaterThan(0);
  });

  it('gives the same assessment for the same runs, in whatever order they come', () => {
    const both = study(
      ['a', 'b'].map((id) => candidate(id)),
      criteria,
    );
    const [a, b] = [run('a', { runtimeS: 9000 }), run('b')];
    expect(assess(both, [a, b], context)).toEqual(assess(both, [b, a], context));
  });

  it('a candidate without a run is a mistake of the program', () => {
    expect(() => assess(study([candidate('a')], criteria), [], context)).toThrow('no run for candidate a');
  });
});
