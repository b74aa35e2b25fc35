import { describe, expect, it } from 'vitest';
import { obstacles } from '../../src/assess/answer.js';
import { assess } from '../../src/assess/assess.js';
import type { NominalOutcome } from '../../src/simulate/outcome.js';
import { candidate, criterion, run, study } from './hand-made.js';

/** An answer on runtime alone, 0 to 200 minutes. */
function answer(
  outcomes: Record<string, Partial<NominalOutcome>>,
  baselineId: string | null = 'now',
  changes = {},
) {
  const ids = Object.keys(outcomes);
  const of = study(
    ids.map((id) => candidate(id)),
    [criterion('runtime', 1, [0, 12000])],
    { baselineId, ...changes },
  );
  const runs = ids.map((id) => run(id, outcomes[id]));
  return assess(of, runs, { version: '0', inputHash: '', inputs: [] }).answer;
}

describe('the answer', () => {
  it('says what to change to, and why, in minutes, watts, grams, money and hours', () => {
    const { sentence, reasons } = answer(
      {
        now: { runtimeS: 3000, holdPowerW: 5.4, bodyMassKg: 0.4 },
        worm: {
          runtimeS: 9000,
          holdCurrentUsed: 'unpowered',
          holdPowerW: 0,
          bodyMassKg: 0.72,
          cost: 61,
          reworkTimeS: 50400,
        },
      },
      'now',
      { targetRuntimeS: 7200 },
    );
    expect(sentence).toBe(
      'Change to worm: it leads now, the drive of today, with a score of 0.75 against 0.25.',
    );
    expect(reasons).toEqual([
      'One pack lasts 150 min with worm, 50 min with now; 120 min would be enough.',
      'worm holds with the power off; now draws 5.4 W while it holds.',
      'worm weighs 320 g more on the body, costs 61 EUR and takes 14 h of work.',
    ]);
  });

  it('begins with what the present drive fails, where it does', () => {
    const { reasons } = answer({ now: { busVoltageV: 16.8 }, worm: {} });
    expect(reasons[0]).toBe('now fails: voltage (16.8 V where at most 14 V is asked).');
    expect(reasons).toHaveLength(3);
  });

  it('keeps the present drive where nothing does better, and says what stops the next', () => {
    const { sentence, reasons } = answer({ now: { runtimeS: 9000 }, worm: { fits: false } });
    expect(sentence).toBe('Keep now: no other drive does better on the criteria as weighted.');
    expect(reasons[0]).toMatch(/^The next in line, worm, fails: fit in its space/);
  });

  it('gives the figure of a limit that is missed, and what was asked', () => {
    const asked = criterion('cue_fidelity', 0, null, { direction: 'at-least', bound: 0.8 });
    const one = candidate('now');
    const { candidates } = assess(study([one], [asked]), [run('now', { cueFidelityRatio: 0.52 })], {
      ...{ version: '0', inputHash: '', inputs: [] },
    });
    expect(obstacles(candidates[0]!)).toBe('fails: cue fidelity (0.52 where at least 0.8 is asked)');
  });

  it('names the best where there is no drive of today', () => {
    expect(answer({ a: { runtimeS: 9000 }, b: {} }, null).sentence).toBe(
      'a leads on the criteria as weighted: ahead of b.',
    );
    expect(answer({ a: {} }, null).sentence).toBe(
      'a leads on the criteria as weighted: it is the only candidate.',
    );
  });

  it('says so where nothing passes, and why for the best and the present drive', () => {
    const { sentence, reasons } = answer({ now: { busVoltageV: 16.8 }, worm: { busVoltageV: 21 } });
    expect(sentence).toBe('No candidate passes every limit.');
    expect(reasons).toEqual([
      'now fails: voltage (16.8 V where at most 14 V is asked).',
      'worm fails: voltage (21 V where at most 14 V is asked).',
    ]);
  });

  it('says so where nothing is known to pass, and names the figure that is missing', () => {
    const { sentence, reasons } = answer({ now: { busVoltageV: 21 }, worm: { fits: null } });
    expect(sentence).toBe('No candidate is known to pass every limit; worm passes what could be judged.');
    expect(reasons[0]).toBe('worm lacks length, width, height.');
  });

  it('calls candidates by their labels, and adds the id where two are called the same', () => {
    const [one, two] = [candidate('a'), candidate('b')].map((entry) => ({ ...entry, label: 'Worm' }));
    const of = study([one!, two!], [criterion('runtime', 1, [0, 12000])]);
    const runs = [run('a', { runtimeS: 9000 }), run('b')];
    const { sentence } = assess(of, runs, { version: '0', inputHash: '', inputs: [] }).answer;
    expect(sentence).toBe('Worm (a) leads on the criteria as weighted: ahead of Worm (b).');
  });
});
