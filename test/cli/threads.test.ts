import { describe, expect, it } from 'vitest';
import { threadCount } from '../../src/cli/helper-threads.js';
import { demo, holdwright } from './program.js';

describe('threads', () => {
  it('do not change a single digit of the results', { timeout: 180_000 }, () => {
    const results = ['1', '2', '3'].map((count) =>
      holdwright(['rank', demo, '--json'], { env: { HOLDWRIGHT_THREADS: count } }),
    );
    expect(results.map(({ code }) => code)).toEqual([0, 0, 0]);
    expect(results[0]!.stdout.length).toBeGreaterThan(10_000);
    expect(results[1]!.stdout === results[0]!.stdout).toBe(true);
    expect(results[2]!.stdout === results[0]!.stdout).toBe(true);
  });

  it('are at least one, whatever is asked for', () => {
    expect(threadCount('3')).toBe(3);
    expect(threadCount('1')).toBe(1);
    const usual = threadCount(undefined);
    expect(usual).toBeGreaterThanOrEqual(1);
    for (const nonsense of ['0', '-2', 'many', '']) expect(threadCount(nonsense)).toBe(usual);
  });
});
