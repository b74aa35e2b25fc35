import { describe, expect, it } from 'vitest';
import { finishPortions, shareDraws, takePortions } from '../../src/app/shared-draws.js';
import { EnsembleRun } from '../../src/simulate/ensemble/run-ensemble.js';
import { demoStudy } from '../assess/demo-study.js';

const study = demoStudy('stage-prop');
const drawCount = 200;
const newRun = () => new EnsembleRun(study, study.candidates, drawCount);
const alone = newRun().emptyOutcomes();
newRun().run(0, drawCount, alone);

const plain = (outcomes: Float64Array[][]) => outcomes.map((columns) => columns.map((column) => [...column]));

describe('draws that several threads compute together', () => {
  it('are the same as those that one computes alone', () => {
    const shared = shareDraws(newRun());
    takePortions(shared, () => EnsembleRun.from(shared.run));
    expect(plain(shared.outcomes)).toEqual(plain(alone));
  });

  it('are not computed again by who comes when all are taken', () => {
    const shared = shareDraws(newRun());
    takePortions(shared, newRun);
    takePortions(shared, () => {
      throw new Error('nothing is left to do');
    });
    finishPortions(shared, newRun(), 1);
    expect(plain(shared.outcomes)).toEqual(plain(alone));
  });

  it('are complete although a thread died over the portion it had taken', () => {
    const shared = shareDraws(newRun());
    Atomics.add(shared.portionCounts, 0, 1);
    takePortions(shared, newRun);
    const lost = shared.doneCounts.indexOf(0);
    expect(lost).toBe(0);
    finishPortions(shared, newRun(), 1);
    expect(shared.doneCounts.includes(0)).toBe(false);
    expect(plain(shared.outcomes)).toEqual(plain(alone));
  });
});
