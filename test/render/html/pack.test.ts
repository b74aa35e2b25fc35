import { describe, expect, it } from 'vitest';
import { choiceFrom } from '../../../src/page/data.js';
import { jsonForPage, pageDataOf } from '../../../src/render/html/weighing/pack.js';
import type { Weighing } from '../../../src/report/index.js';

const tiers = (...values: number[]) => Uint8Array.from(values);
const weighing = {
  choice: {
    criteria: [
      { id: 'runtime', weightScore: 3 },
      { id: 'cost', weightScore: 0 },
    ],
    limits: ['noise'],
    drawCount: 9,
    candidates: [
      {
        id: 'a',
        worthScores: [0.1234567890123, 1],
        passes: true,
        limitPasses: [null],
        drawnWorthScores: Float64Array.from({ length: 18 }, (_, index) => index / 17),
        tiers: tiers(0, 2, 0, 0, 0, 0, 0, 0, 2),
        limitTiers: [tiers(1, 2, 1, 1, 1, 1, 1, 1, 2)],
      },
    ],
  },
  limits: [{ id: 'noise', label: 'noise', note: '' }],
  candidates: [{ id: 'a', label: 'A </script>\u2028', alwaysFails: [] }],
  steps: [{ id: 'much', label: 'much', weightScore: 4 }],
  onPaperFraction: 0.8,
  words: {},
} as unknown as Weighing;

describe('what a page carries of the draws', () => {
  const text = jsonForPage(pageDataOf(weighing));
  const [before] = weighing.choice.candidates;
  const [after] = choiceFrom(JSON.parse(text)).candidates;

  it('comes out as it went in, worths to half a step of 16 bits', () => {
    expect(after!.worthScores).toEqual(before!.worthScores);
    expect([after!.tiers, after!.limitTiers]).toEqual([before!.tiers, before!.limitTiers]);
    expect(after!.limitPasses).toEqual([null]);
    after!.drawnWorthScores.forEach((worth, at) => {
      expect(Math.abs(worth - before!.drawnWorthScores[at]!)).toBeLessThanOrEqual(0.5 / 65535 + 1e-15);
    });
  });

  it('ends no element and no line of a script', () => {
    expect(text).not.toMatch(/[<>\u2028]/);
    expect(JSON.parse(text).candidates[0].label).toBe('A </script>\u2028');
  });
});
