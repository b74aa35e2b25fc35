import { describe, expect, it } from 'vitest';
import { lesserChangeIds } from '../../../src/assess/lesser-changes/lesser-change.js';
import { lesserChanges } from '../../../src/assess/lesser-changes/lesser-changes.js';
import { helps } from '../../../src/assess/lesser-changes/pairs.js';
import type { ChangeTools } from '../../../src/assess/lesser-changes/trial.js';
import { readAssumptions } from '../../../src/input/read-assumptions.js';
import { readStudy } from '../../../src/input/read-study.js';
import type { Study } from '../../../src/study/study.js';
import { demoFiles } from '../../app/demo.js';
import { plainCandidate, plainPack } from '../../simulate/plain-study.js';
import { criterion } from '../hand-made.js';
import { setupOf, tools, withFeature } from './tools.js';

const ladderOf = (study: Study, of: ChangeTools = tools) => lesserChanges(study, study.candidates[0]!, of);

/** Tools that count their simulations. */
function counting() {
  const counted = { runs: 0 };
  const simulate: ChangeTools['simulate'] = (study, candidate) => {
    counted.runs++;
    return tools.simulate(study, candidate);
  };
  return { counted, tools: { ...tools, simulate } };
}

const criteria = [
  criterion('runtime', 3, [0, 360000]),
  criterion('rework_hours', 1, [360000, 0]),
  criterion('cost', 1, [100, 0]),
];
const usual = setupOf({ criteria, pack: plainPack('lipo', { priceMoney: 20 }) }).study;

describe('the ladder of lesser changes', () => {
  const ladder = ladderOf(usual);

  it('tries every change or says why not', () => {
    const seen = [...ladder.ladder.map(({ id }) => id), ...ladder.leftOut.map(({ id }) => id)];
    expect(seen.sort()).toEqual([...lesserChangeIds].sort());
    expect(ladder.leftOut.every(({ reason }) => reason.length > 10)).toBe(true);
  });

  it('stands in the order of the score gained', () => {
    const scores = ladder.ladder.map(({ gain }) => gain.score);
    for (let i = 1; i < scores.length; i++) expect(scores[i]!).toBeLessThan(scores[i - 1]! + 0.0006);
  });

  it('counts mass, money and hours of a change against it', () => {
    const latch = ladder.ladder.find(({ id }) => id === 'hold-latch')!;
    expect(latch.after.bodyMassKg! - ladder.before.bodyMassKg!).toBeCloseTo(latch.burden.massKg, 12);
    // Scales: 360 000 s of runtime count three fifths, 360 000 s of work and 100 in money one fifth each.
    const worth =
      (0.6 * latch.gain.runtimeS! - 0.2 * latch.burden.workTimeS) / 360000 -
      0.2 * (latch.burden.costMoney! / 100);
    expect(latch.gain.score).toBeCloseTo(worth, 9);
  });

  it('is plain data that survives being written down', () => {
    expect(JSON.parse(JSON.stringify(ladder))).toEqual(ladder);
  });

  it('is the same each time', () => {
    expect(ladderOf(usual)).toEqual(ladder);
  });

  it('leaves the study as it was', () => {
    const frozen = JSON.stringify(usual);
    ladderOf(usual);
    expect(JSON.stringify(usual)).toBe(frozen);
  });

  it('scales each gain to 100 g of what the change weighs', () => {
    const spring = ladder.ladder.find(({ id }) => id === 'assist-spring')!;
    expect(spring.gainPerHundredGrams!.runtimeS).toBeCloseTo(
      (0.1 * spring.gain.runtimeS!) / spring.burden.massKg,
      6,
    );
    expect(ladder.ladder.find(({ id }) => id === 'slower-moves')!.gainPerHundredGrams).toBeNull();
  });
});

describe('the best pair', () => {
  const ladder = ladderOf(usual);
  const pair = ladder.bestPair!;

  it('consists of two of the three best that do not stand in for each other', () => {
    const helpful = ladder.ladder.filter((change) => helps(change, ladder.passesBefore)).map(({ id }) => id);
    expect(pair.id).toBe('pair');
    expect(pair.parts).toHaveLength(2);
    for (const part of pair.parts) expect(helpful).toContain(part);
    expect(pair.parts.every((part) => ['assist-spring', 'anchored-coil'].includes(part))).toBe(false);
  });

  it('carries the burdens of both', () => {
    const alone = pair.parts.map((part) => ladder.ladder.find(({ id }) => id === part)!);
    const workS = alone.reduce((sum, { burden }) => sum + burden.workTimeS, 0);
    expect(pair.burden.workTimeS).toBeCloseTo(workS, 6);
  });

  it('is solved as a whole: a spring is designed for the lighter feature', () => {
    const heavy = withFeature({ massKg: 0.4 }, { criteria: [criterion('hold_power', 1, [2, 0])] }).study;
    const found = lesserChanges(heavy, heavy.candidates[0]!, tools);
    const both = found.bestPair!;
    const rate = (change: typeof both) => change.settings.find(({ field }) => field === 'spring.rate')?.value;
    if (both.parts.includes('mass-shaved') && both.parts.includes('anchored-coil')) {
      const alone = found.ladder.find(({ id }) => id === 'anchored-coil')!;
      expect(rate(both)).toBeLessThan(rate(alone) as number);
    }
    expect(both.gain.holdPowerW).toBeGreaterThanOrEqual(found.ladder[0]!.gain.holdPowerW - 0.05);
  });
});

describe('a limit that the drive of today fails', () => {
  const torque = { direction: 'at-least' as const, bound: 8 };
  const study = setupOf({ criteria: [criterion('torque_margin', 0, null, torque), ...criteria] }).study;
  const ladder = ladderOf(study);

  it('puts the changes first that make it pass', () => {
    expect(ladder.passesBefore).toBe(false);
    expect(ladder.ladder[0]!.passes).toBe(true);
    const passes = ladder.ladder.map(({ passes: pass }) => pass === true);
    expect(passes.indexOf(false)).toBe(passes.filter((pass) => pass).length);
  });
});

describe('a show that cannot be played today', () => {
  const weak = { noLoadSpeed: 1, stallEffort: 0.35, stallCurrentA: 1 };
  const study = setupOf({ candidates: [plainCandidate('position-servo', weak)] }).study;
  const ladder = ladderOf(study);

  it('runs for no time before, and for all of its time with a spring', () => {
    expect(ladder.before.runtimeS).toBeNull();
    const coil = ladder.ladder.find(({ id }) => id === 'anchored-coil')!;
    expect(coil.after.runtimeS).not.toBeNull();
    expect(coil.gain.runtimeS).toBe(coil.after.runtimeS);
  });
});

describe('on the lantern parade', () => {
  const read = readStudy(demoFiles('lantern-parade'), readAssumptions(), []);
  if (!read.ok) throw new Error('the demo does not read');
  const study = read.value;
  const baseline = study.candidates.find(({ id }) => id === study.baselineId)!;

  it('it takes at most fourteen simulations', () => {
    const { counted, tools: counter } = counting();
    lesserChanges(study, baseline, counter);
    expect(counted.runs).toBeLessThanOrEqual(14);
  });

  it('a spring nearly doubles the runtime, and 25 % slower moves do not help', () => {
    const { ladder, before } = lesserChanges(study, baseline, tools);
    const gain = (id: string) => ladder.find((change) => change.id === id)!.gain.runtimeS!;
    expect(gain('anchored-coil')).toBeGreaterThan(0.8 * before.runtimeS!);
    expect(gain('slower-moves')).toBeLessThan(0);
  });

  it('says where the spring overbalances and what a power cut does then', () => {
    const { ladder } = lesserChanges(study, baseline, tools);
    const coil = ladder.find(({ id }) => id === 'anchored-coil')!;
    const text = coil.sideEffects.join(' ');
    expect(text).toMatch(/Without power it does not fall; today it falls in 0\.77 s/);
    expect(text).toMatch(/Between 1\d(\.\d)?° and 56° the spring outweighs the feature by up to 0\.0\d+ N·m/);
    expect(text).toMatch(/stores 3\.\d+ J/);
  });
});
