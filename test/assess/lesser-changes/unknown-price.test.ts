import { describe, expect, it } from 'vitest';
import { assessStudy } from '../../../src/app/study.js';
import { lesserChanges } from '../../../src/assess/lesser-changes/lesser-changes.js';
import { demoFiles, request } from '../../app/demo.js';
import { plainPack } from '../../simulate/plain-study.js';
import { criterion } from '../hand-made.js';
import { setupOf, tools } from './tools.js';

const criteria = [
  criterion('runtime', 3, [0, 360000]),
  criterion('rework_hours', 1, [360000, 0]),
  criterion('cost', 1, [100, 0]),
];

function ladderAt(priceMoney: number | null, of = criteria) {
  const { study, candidate } = setupOf({ criteria: of, pack: plainPack('lipo', { priceMoney }) });
  return lesserChanges(study, candidate, tools);
}

describe('a pack whose price nobody wrote down', () => {
  const blank = ladderAt(null);
  const priced = ladderAt(20);
  const change = ({ ladder }: typeof blank, id: string) => ladder.find((one) => one.id === id)!;
  const both = change(blank, 'packs-in-parallel');

  it('leaves cost out of the gain of the change and of all that it is compared with', () => {
    // Scales: 360 000 s of runtime count three fifths, 360 000 s of work one fifth; of 100 in money nothing.
    const worth = (runtimeS: number | null) => 0.6 * Math.min(1, runtimeS! / 360000);
    for (const { after, gain, burden } of blank.ladder) {
      const gained = worth(after.runtimeS) - worth(blank.before.runtimeS);
      expect(gain.score).toBeCloseTo(gained - (0.2 * burden.workTimeS) / 360000, 9);
    }
    expect(blank.before.score).toBe(priced.before.score);
  });

  it('takes no more off than cost is worth: filled in with 20, two packs with their lead cost 30 of 100', () => {
    const gain = both.gain.score - change(priced, 'packs-in-parallel').gain.score;
    expect(gain).toBeCloseTo((0.2 * 30) / 100, 9);
  });

  it('leaves the changes in the order that they have where cost carries no weight', () => {
    const costless = criteria.map((one) => (one.id === 'cost' ? { ...one, weightScore: 0 } : one));
    const order = ({ ladder }: typeof blank) => ladder.map(({ id }) => id);
    expect(order(blank)).toEqual(order(ladderAt(null, costless)));
    expect(order(blank)).toEqual(order(ladderAt(20, costless)));
  });

  it('is told in the words of the change, with what that does where cost is weighed', () => {
    expect(both.sideEffects[0]).toMatch(
      /^Its price is not known: the price of pack is blank in packs\.csv\. Until/,
    );
    expect(both.burden).toMatchObject({ costMoney: null });
    expect(both.burden.basis).toContain('its price is not known');
    expect(change(priced, 'packs-in-parallel').sideEffects.join()).not.toContain('not known');
    const [, , cost] = criteria;
    const unweighed = ladderAt(null, [criteria[0]!, { ...cost!, weightScore: 0 }]);
    expect(change(unweighed, 'packs-in-parallel').sideEffects[0]).toMatch(/packs\.csv\.$/);
  });

  it('keeps a limit on cost from being judged, which is no pass', () => {
    const limit = criterion('cost', 1, [100, 0], { direction: 'at-most', bound: 100 });
    const judged = ladderAt(null, [criteria[0]!, limit]);
    expect(change(judged, 'packs-in-parallel').passes).toBeNull();
    expect(change(judged, 'slower-moves').passes).toBe(true);
  });
});

describe('the demo with one pack along, in draws', { timeout: 120_000 }, () => {
  const ratedAt = (price: string) => {
    const files = demoFiles('lantern-parade').map(({ name, bytes }) => {
      const text = Buffer.from(bytes).toString();
      const [from, to] =
        name === 'packs.csv'
          ? ['0.93..0.97,14,', `0.93..0.97,${price},`]
          : name === 'study.csv'
            ? ['pack.carried,2', 'draws,200,,\npack.carried,1']
            : ['at most 150', ''];
      return { name, bytes: Buffer.from(text.replace(from!, to!)) };
    });
    const result = assessStudy(request(files), 'ranking');
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    return result.value.lesserChanges.find(({ id }) => id === 'packs-in-parallel')!;
  };
  const [blank, free, dear] = ['', '0', '140'].map(ratedAt) as [
    ReturnType<typeof ratedAt>,
    ReturnType<typeof ratedAt>,
    ReturnType<typeof ratedAt>,
  ];

  it('a blank price leaves cost out of the band too: 150 of money is one twelfth', () => {
    // Weights 4 + 2 + 2 + 2 + 1 + 1 = 12; the lead costs 10, with a pack of 140 that is all of the scale.
    const cost = (money: number) => money / 150 / 12;
    const { p10, median, p90 } = blank.gainBands!.score!;
    for (const [other, money] of [
      [free, 10],
      [dear, 150],
    ] as const) {
      const band = other.gainBands!.score!;
      expect(p10 - band.p10).toBeCloseTo(cost(money), 9);
      expect(median - band.median).toBeCloseTo(cost(money), 9);
      expect(p90 - band.p90).toBeCloseTo(cost(money), 9);
    }
  });

  it('and out of the gain of the leader that it is held against, so that it is no better than free', () => {
    expect(blank.passProbability).toBe(free.passProbability);
    expect(blank.leaderGainRatio!).toBeGreaterThan(dear.leaderGainRatio!);
    expect(blank.leaderGainRatio!).toBeLessThan(free.leaderGainRatio!);
  });
});
