import { describe, expect, it } from 'vitest';
import { drawnStudy } from '../../../src/assess/certainty/drawn-study.js';
import type { Knowable } from '../../../src/assess/what-if/knowable.js';
import { measureFirst } from '../../../src/assess/what-if/measure-first.js';
import { shownAs } from '../../../src/assess/what-if/shown-value.js';
import { Sfc32 } from '../../../src/simulate/sampling/sfc32.js';
import { columnsOf } from '../certainty/drawn.js';
import { candidate, criterion, run, study } from '../hand-made.js';

const drawCount = 1000;
const random = new Sfc32(3, 'readings of a test');
const even = () => Float64Array.from({ length: drawCount }, () => random.next());
const key = even();
const noise = even();

/** Runtime of `a` is 100·x, that of `b` always 50: knowing x is worth E max(x, ½) − ½ = 1/8. */
const own = [candidate('a'), candidate('b')];
const criteria = [criterion('runtime', 1, [0, 100])];
const of = study(own, criteria);
const drawn = drawnStudy(
  criteria,
  own.map((entry) => ({ judged: { study: of, candidate: entry, run: run(entry.id) }, limits: [] })),
  {
    candidateIds: ['a', 'b'],
    drawCount,
    outcomes: [
      columnsOf(drawCount, { runtimeS: [...key].map((x) => 100 * x) }),
      columnsOf(drawCount, { runtimeS: [...key].map(() => 50) }),
    ],
  },
);

const knowable = (field: string, values: Float64Array, minutes = 5): Knowable => ({
  path: `feature.${field}`,
  field,
  owner: null,
  label: field,
  values,
  show: (value) => value.toFixed(2),
  scale: 'share',
  bench: { instrument: 'ruler', minutes, method: 'look' },
});

describe('what to measure first', () => {
  const found = measureFirst(
    [
      knowable('noise', noise),
      knowable('key', key, 20),
      knowable(
        'twin',
        key.map((x) => x),
        10,
      ),
    ],
    drawn,
    ['a', 'b'],
    1,
  );

  it('is what decides the choice, by what knowing it is worth', () => {
    expect(found.map(({ knowable: { field } }) => field)).toEqual(['twin', 'key', 'noise']);
    expect(found[0]!.worth.worthScore).toBeGreaterThan(0.95 * 0.125);
    expect(found[0]!.worth.worthScore).toBeLessThan(1.05 * 0.125);
    expect(found[2]!.worth.worthScore).toBeLessThan(0.005);
  });

  it('of equal ones the one that is measured sooner', () => {
    expect(found.slice(0, 2).map(({ worth: { minutes } }) => minutes)).toEqual([10, 20]);
  });

  it('tells how the lead stands at its ends', () => {
    const [{ ends, leadSwingScore }] = found as [(typeof found)[0]];
    expect(ends.map(({ aheadProbability }) => aheadProbability)).toEqual([0, 1]);
    expect(leadSwingScore).toBeCloseTo(0.9, 1);
    expect(Number(ends[0]!.shown)).toBeCloseTo(0.1, 1);
  });

  it('asks for no more exactness than the choice needs', () => {
    const exact = measureFirst([knowable('key', key)], drawn, ['a', 'b'], 1);
    expect(exact[0]!.worth.precision).toBe('±20 %');
  });
});

describe('a value as people write it', () => {
  const entry = (shown: string, value: number) => ({ shown, value }) as never;

  it.each([
    ['860 g (835–885)', 0.86, 0.7, '700 g'],
    ['6.37 N·m (3.82–6.69)', 6.37, 4.5, '4.5 N·m'],
    ['95 % (93–97)', 0.95, 0.9, '90 %'],
    ['14 °C', 287.15, 283.15, '10 °C'],
    ['25 C', 25, 10, '10 C'],
    ['0.15 (0–0.8)', 0.15, 0.0673, '0.0673'],
  ])('%s has others in its own unit', (shown, value, other, text) => {
    expect(shownAs(entry(shown, value))(other)).toBe(text);
  });

  it('without a history of its own is a factor', () => {
    expect(shownAs(undefined)(0.7)).toBe('× 0.7');
  });
});
