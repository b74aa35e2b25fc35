import { describe, expect, it } from 'vitest';
import { assessStudy } from '../../../src/app/study.js';
import type { DrawnStudy } from '../../../src/assess/certainty/drawn-study.js';
import { tier } from '../../../src/assess/choosing/drawn-worths.js';
import { standingsIfHeld } from '../../../src/assess/verdict/open-limits.js';
import { verdictOf } from '../../../src/assess/verdict/verdict.js';
import { demoFiles, request } from '../../app/demo.js';
import { parts } from './parts.js';

/** Four draws of one criterion: `now` is judged, `worm` is not and fails in the last draw. */
const drawn = (...worm: number[]): DrawnStudy =>
  ({
    drawCount: 4,
    candidateIds: ['now', 'worm'],
    ownWeights: Float64Array.of(1),
    worths: {
      drawCount: 4,
      criterionCount: 1,
      worths: [Float64Array.of(0.5, 0.5, 0.5, 0.5), Float64Array.of(0.9, 0.9, 0.1, 0.9)],
      tiers: [new Uint8Array(4), Uint8Array.from(worm)],
    },
  }) as unknown as DrawnStudy;

const { notJudged, fails } = tier;

describe('limits that a blank keeps from being judged', () => {
  it('count as held in a second look, and only there', () => {
    expect(standingsIfHeld(drawn(notJudged, notJudged, notJudged, fails))).toEqual({
      now: { leadProbability: 0.5, beatProbabilities: { now: 0.5, worm: 0.5 } },
      worm: { leadProbability: 0.5, beatProbabilities: { now: 0.5, worm: 0.5 } },
    });
    expect(standingsIfHeld(drawn(0, 0, 0, fails))).toBeNull();
  });

  /** The drive of today passes and leads; the other one lacks a figure and would lead in so many draws. */
  const hiding = (leads: number) =>
    verdictOf(
      parts(
        { leads: 0.97 },
        { passes: null, passing: null, leads: 0.03 },
        {
          ifHeld: {
            now: { leadProbability: 1 - leads, beatProbabilities: { worm: 1 - leads } },
            worm: { leadProbability: leads, beatProbabilities: { now: leads } },
          },
        },
      ),
    );

  it('make filling in the first thing to do where they may hide who leads', () => {
    const { kind, sentence, confidence, leader } = hiding(0.68);
    expect({ kind, leader }).toEqual({ kind: 'measure first', leader: 'now' });
    expect(sentence).toMatch(
      /^Fill in first what worm lacks .* it leads in 68 % of the draws; until then now/,
    );
    expect(confidence).toMatchObject({ probability: 0.97, word: 'open' });
  });

  it('never leave the answer surer than it is with them held', () => {
    expect(hiding(0.05).confidence.word).toBe('clear');
    const { kind, confidence, overturnedBy } = hiding(0.2);
    expect(kind).toBe('keep');
    expect(confidence.word).toBe('likely');
    expect(confidence.sentence).toMatch(
      /in 97 % of the draws, in 80 % if what could not be judged passes\.$/,
    );
    expect(overturnedBy[0]).toMatch(/^If worm keeps its limit .* it leads in 20 % of the draws\.$/);
    expect(hiding(0.6)).toMatchObject({ kind: 'keep', confidence: { word: 'open' } });
  });

  it('do not speak for a redesign where it is the drive of today that is not judged', () => {
    const against = (beats: number) =>
      verdictOf(
        parts(
          { passes: null, passing: null, leads: 0.02 },
          { leads: 0.98 },
          {
            ifHeld: {
              now: { leadProbability: 1 - beats, beatProbabilities: { worm: 1 - beats } },
              worm: { leadProbability: beats, beatProbabilities: { now: beats } },
            },
          },
        ),
      );
    expect(against(0.8)).toMatchObject({
      kind: 'redesign',
      confidence: { probability: 0.8, word: 'likely' },
    });
    expect(against(0.6)).toMatchObject({ kind: 'keep', confidence: { probability: 0.4 } });
  });
});

describe('the demo, with a limit on noise and that cell of its leader left blank', {
  timeout: 120_000,
}, () => {
  const assessed = (...changes: ((text: string) => string)[]) => {
    const [candidates = (text: string) => text] = changes;
    const files = demoFiles('lantern-parade').map(({ name, bytes }) => {
      const text = Buffer.from(bytes).toString();
      const changed =
        name === 'candidates.csv'
          ? candidates(text)
          : name === 'criteria.csv'
            ? `${text}noise,0,,,at most 60 dB,\n`
            : name === 'study.csv'
              ? `${text.trimEnd()}\ndraws,200\n`
              : text;
      return { name, bytes: Buffer.from(changed) };
    });
    const result = assessStudy(request(files), 'ranking');
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    return result.value;
  };

  it('is to be filled in first; filled in, the answer is another one', () => {
    const blank = assessed((text) => text.replace(',15 min,48 dB,', ',15 min,,'));
    expect(blank.candidates.find(({ id }) => id === 'worm-driver')!.passes).toBeNull();
    expect(blank.verdict.kind).toBe('measure first');
    expect(blank.verdict.sentence).toMatch(/^Fill in first what Worm, position driver lacks \(noise\)/);
    const given = assessed();
    expect(given.verdict.kind).not.toBe('measure first');
    // What the blank hid is what comes out without it; without the noise the other inputs are drawn otherwise.
    const leads = given.certainty!.candidates['worm-driver']!.leadProbability!;
    const [, told = ''] = /it leads in (\d+) % of the draws/.exec(blank.verdict.sentence) ?? [];
    expect(Math.abs(Number(told) / 100 - leads)).toBeLessThan(0.08);
  });
});
