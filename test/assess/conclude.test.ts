import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judgedOf } from '../../src/assess/assess.js';
import { agreement } from '../../src/assess/calibration/agreement.js';
import { priorDraws } from '../../src/assess/calibration/prior-draws.js';
import { quantileOf } from '../../src/assess/certainty/bands.js';
import { drawnStudy } from '../../src/assess/certainty/drawn-study.js';
import { beginDraws } from '../../src/assess/certainty/draws.js';
import { conclude } from '../../src/assess/conclude.js';
import { limitsOf } from '../../src/assess/limits.js';
import { compareForRank } from '../../src/assess/ranking.js';
import { withValueAt } from '../../src/assess/value-at-path.js';
import { howToMeasure } from '../../src/input/how-to-measure.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readPointsOfView } from '../../src/input/read-points-of-view.js';
import { readStudy } from '../../src/input/read-study.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { EnsembleRun } from '../../src/simulate/ensemble/run-ensemble.js';
import type { Study } from '../../src/study/study.js';
import { demoFile, demoFiles } from '../app/demo.js';
import { demoStudy } from './demo-study.js';

const views = 'points-of-view.csv';
const templates = { [views]: readFileSync(new URL(`../../templates/${views}`, import.meta.url), 'utf8') };

const simulate = (study: Study, candidate: Study['candidates'][number]) =>
  simulateCandidate(study, candidate, 'sketch');

function concluded(study: Study, depth: 'ranking' | 'report' = 'report') {
  const runs = study.candidates.map((candidate) => simulateCandidate(study, candidate));
  const reading = readPointsOfView(templates, study, readAssumptions());
  const tools = {
    simulate,
    howToMeasure,
    views: reading.views,
    depth,
    progress() {},
  };
  return conclude(study, runs, beginDraws(study).finish, { version: '0', inputHash: '', inputs: [] }, tools);
}

/** Demo one with the readings of its example file. */
function measuredDemo(): Study {
  const bytes = demoFile('lantern-parade', 'measured.csv.example');
  const files = [...demoFiles('lantern-parade'), { name: 'measured.csv', bytes }];
  const read = readStudy(files, readAssumptions(), []);
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('\n'));
  return read.value;
}

describe('demo one, concluded', { timeout: 120_000 }, () => {
  const study = demoStudy();
  const found = concluded(study);
  const certainty = found.certainty!;
  const all = Object.values(certainty.candidates);

  it('plans the day of the drive of today with the change that the verdict advises', () => {
    const { verdict, day, lesserChanges } = found;
    expect(verdict.change).toEqual(['packs-in-parallel']);
    const changed = day!.changed!;
    const asBuilt = day!.plans.find(({ candidate }) => candidate === verdict.leader)!;
    expect([changed.candidate, changed.packsConnectedCount, asBuilt.packsConnectedCount]).toEqual([
      verdict.leader,
      2,
      1,
    ]);
    // What is drawn does not change, what is there doubles: a set is emptied half as far.
    const change = lesserChanges.find(({ parts }) => parts.join() === verdict.change.join())!;
    expect(changed.bodyMassKg).toBeCloseTo(change.after.bodyMassKg!, 9);
    expect(changed.blocks.map(({ meanCurrentA }) => meanCurrentA)[0]!).toBeCloseTo(
      asBuilt.blocks[0]!.meanCurrentA,
      2,
    );
    const used = ({ segments }: typeof changed) =>
      segments[0]!.socStartFraction - segments[0]!.socEndFraction;
    expect(used(changed) / used(asBuilt)).toBeCloseTo(0.5, 1);
    // The aircraft line is about one pack, whatever is connected to it.
    expect(changed.aircraft).toEqual(asBuilt.aircraft);
    expect(changed.bring[0]!.count).toBe(2 * changed.packsSureCount! + 1);
  });

  it('gives the same assessment for the same study', () => {
    expect(concluded(demoStudy())).toEqual(found);
  });

  it('gives the ranking the verdict of the report, without what only the report shows', () => {
    const ranking = concluded(study, 'ranking');
    expect({ ...ranking.verdict, overturnedBy: [] }).toEqual({ ...found.verdict, overturnedBy: [] });
    expect(ranking.certainty!.sensitivity).toBeNull();
    expect(ranking.nextMeasurements).toEqual(found.nextMeasurements);
  });

  it('does not depend on how the draws are split', () => {
    const { ensemble } = beginDraws(study).finish();
    const run = new EnsembleRun(study, study.candidates, study.drawsCount);
    const outcomes = run.emptyOutcomes();
    for (const [from, to] of [
      [1000, 2048],
      [0, 3],
      [3, 1000],
    ] as const) {
      run.run(from, to, outcomes);
    }
    const nominal = judgedOf(
      study,
      study.candidates.map((candidate) => simulate(study, candidate)),
    ).map((judged) => ({ judged, limits: limitsOf(judged) }));
    const whole = drawnStudy(study.criteria, nominal, ensemble);
    const split = drawnStudy(study.criteria, nominal, { ...ensemble, outcomes });
    expect(split).toEqual(whole);
  });

  it('shares every draw out among leaders and ranks', () => {
    const leads = all.reduce((sum, { leadProbability }) => sum + leadProbability!, 0);
    expect(leads).toBeCloseTo(1, 9);
    for (const { acceptability } of all) {
      expect(acceptability.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }
    for (const { candidate, against, beatProbability } of certainty.pairwise) {
      const back = certainty.pairwise.find(
        (pair) => pair.candidate === against && pair.against === candidate,
      )!;
      expect(beatProbability + back.beatProbability).toBeCloseTo(1, 9);
    }
  });

  it('carries its bands to every candidate, in order', () => {
    for (const { uncertain } of found.candidates) {
      for (const { p10, median, p90 } of Object.values(uncertain)) {
        expect(p10 <= median && median <= p90).toBe(true);
      }
    }
  });

  it('has four other points of view, each sharing out its draws', () => {
    expect(certainty.pointsOfView.map(({ id }) => id)).toEqual(['wearer', 'builder', 'organiser', 'purse']);
    for (const { weights, leadProbabilities } of certainty.pointsOfView) {
      expect(Object.values(weights).reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 9);
      expect(leadProbabilities.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
    }
  });

  it('tells flips that the whole study shows when it is computed again', () => {
    const { flips, leader } = certainty.sensitivity!;
    expect(flips.length).toBeGreaterThan(0);
    for (const { path, value, leaderBeyond } of flips) {
      const changed = withValueAt(study, path, value)!;
      const order = concludedOrder(changed);
      expect([leader, leaderBeyond]).toContain(order.find((id) => id === leader || id === leaderBeyond));
      expect(order[0], `${path} at ${value}`).toBe(leaderBeyond);
    }
  });

  it('compares each lesser change with the leader, and only where there is something to gain', () => {
    expect(found.lesserChanges.length).toBeGreaterThan(5);
    for (const { gainBands, leaderGainRatio } of found.lesserChanges) {
      expect(gainBands!.score).not.toBeNull();
      expect(leaderGainRatio).not.toBeNull();
    }
  });

  it('plans the day with every candidate', () => {
    expect(found.day!.plans.map(({ candidate }) => candidate)).toEqual(found.candidates.map(({ id }) => id));
    expect(found.day!.candidate).toBe(found.verdict.leader);
  });
});

/** Rank order from whole simulations, limits and score alone. */
function concludedOrder(study: Study): string[] {
  const { candidates } = concludedNominally(study);
  return [...candidates].sort(compareForRank).map(({ id }) => id);
}

function concludedNominally(study: Study) {
  return concluded({ ...study, drawsCount: 16 }, 'ranking');
}

describe('demo one with what was measured', { timeout: 120_000 }, () => {
  const listed = demoStudy();
  const study = measuredDemo();
  const [before, after] = [concluded(listed, 'ranking'), concluded(study, 'ranking')];

  it('has readings inside what was believed of them', () => {
    const baseline = listed.candidates.find(({ id }) => id === listed.baselineId)!;
    const prior = priorDraws(listed, baseline, ['runtime', 'hold_current'], { drawCount: 4096 });
    for (const { quantity, value } of study.measured) {
      const sorted = prior.modelled[quantity]!.slice().sort();
      expect(value).toBeGreaterThan(quantileOf(sorted, 0.05));
      expect(value).toBeLessThan(quantileOf(sorted, 0.95));
    }
    expect(agreement(study, prior, study.measured).contradicts).toBe(false);
  });

  it('has another verdict', () => {
    expect(before.verdict.kind).toBe('keep with a lesser change');
    expect(after.verdict.kind).toBe('keep');
  });

  it('knows the present drive better, and the others no worse', () => {
    const width = (of: typeof before, id: string) => {
      const { p10, p90 } = of.candidates.find((candidate) => candidate.id === id)!.uncertain.runtimeS!;
      return p90 - p10;
    };
    expect(width(after, 'servo-now')).toBeLessThan(0.7 * width(before, 'servo-now'));
    expect(width(after, 'worm-driver')).toBeLessThan(1.1 * width(before, 'worm-driver'));
    expect(after.certainty!.calibration).toMatchObject({ bandsGiven: true, contradiction: null });
  });

  it('asks for no reading that is there already', () => {
    const asked = after.nextMeasurements.map(({ field, candidate }) => `${field} of ${candidate}`);
    expect(asked).not.toContain('runtime of servo-now');
    expect(asked).not.toContain('hold_current of servo-now');
  });

  it('says nothing of how sure it is where measured and computed contradict each other', () => {
    const wrong = {
      ...study,
      measured: [{ quantity: 'runtime', value: 60000, halfWidth: 600, note: '' }],
    } as Study;
    const { verdict, certainty, candidates, nextMeasurements } = concluded(wrong, 'ranking');
    expect(verdict).toMatchObject({ kind: 'measure first', confidence: { probability: null, word: 'open' } });
    expect(verdict.sentence).toMatch(
      /^Check the measured runtime first: .* cannot both be right\. As the figures stand/,
    );
    expect(certainty!.calibration!.contradiction).not.toBeNull();
    expect(candidates.every(({ uncertain }) => Object.keys(uncertain).length === 0)).toBe(true);
    expect(certainty!.candidates['servo-now']).toMatchObject({
      leadProbability: null,
      passProbability: null,
    });
    expect(nextMeasurements.length).toBeGreaterThan(0);
  });
});
