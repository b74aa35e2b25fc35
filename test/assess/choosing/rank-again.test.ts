import { describe, expect, it } from 'vitest';
import { assessStudy } from '../../../src/app/study.js';
import { type Choice, rankAgain } from '../../../src/assess/choosing/rank-again.js';
import { demoFiles, request } from '../../app/demo.js';

function assessed(changes: string[]) {
  let choice: Choice | undefined;
  const keepChoice = (kept: Choice) => {
    choice = kept;
  };
  const wanted = { ...request(demoFiles('stage-prop'), ['draws=150', ...changes]), keepChoice };
  const result = assessStudy(wanted, 'ranking');
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  const { candidates, certainty } = result.value;
  const lines = candidates.map(({ id, score, passes }) => {
    const { leadProbability, passProbability } = certainty!.candidates[id]!;
    return { id, score, passes, leadFraction: leadProbability, passFraction: passProbability };
  });
  return { lines, choice: choice! };
}

const own = assessed([]);
const again = (weights: readonly number[], off: string[] = []) =>
  rankAgain(
    own.choice,
    weights,
    own.choice.limits.map((id) => !off.includes(id)),
  ).map(({ failedLimits: _, ...line }) => line);
const weightsOf = ({ criteria }: Choice) => criteria.map(({ weightScore }) => weightScore);

describe('ranking again from what was kept', { timeout: 120_000 }, () => {
  it('gives the ranking of the study, to the last digit, with its own weights and limits', () => {
    expect(again(weightsOf(own.choice))).toEqual(own.lines);
  });

  it('gives the ranking of a study with another weight and without a limit', () => {
    const changed = assessed(['noise.weight=decisive', 'cue_fidelity.must=']);
    const noise = own.choice.criteria.findIndex(({ id }) => id === 'noise');
    const weights = weightsOf(own.choice).with(noise, 8);
    expect(again(weights, ['cue_fidelity'])).toEqual(changed.lines);
    expect(changed.lines).not.toEqual(own.lines);
  });

  it('keeps voltage and room out of what can be dropped', () => {
    expect(own.choice.limits).toEqual(['cue_fidelity', 'runtime', 'cost', 'torque_margin']);
  });

  it('says nothing of draws where there are none', () => {
    const [first] = rankAgain({ ...own.choice, drawCount: 0 }, weightsOf(own.choice), []);
    expect([first!.leadFraction, first!.passFraction]).toEqual([null, null]);
  });
});
