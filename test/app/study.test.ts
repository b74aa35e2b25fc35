import { describe, expect, it } from 'vitest';
import { checkText } from '../../src/app/check-text.js';
import { explainCandidate } from '../../src/app/explain.js';
import { starter } from '../../src/app/starter.js';
import { assessStudy } from '../../src/app/study.js';
import { workingText } from '../../src/app/working-text.js';
import type { Assessment } from '../../src/assess/assessment.js';
import { demoFiles, request } from './demo.js';

const files = demoFiles('lantern-parade');

function assessed(changes: string[] = [], of = files): Assessment {
  const result = assessStudy(request(of, changes));
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
}

describe('from files to an assessment', { timeout: 120_000 }, () => {
  const now = assessed();

  it('judges every candidate once, in rank order', () => {
    expect(now.candidates.map(({ rank }) => rank)).toEqual(now.candidates.map((_, index) => index + 1));
    expect(new Set(now.candidates.map(({ id }) => id)).size).toBe(now.study.candidates.length);
  });

  it('keeps every file as read, with a hash of its own', () => {
    expect(now.inputs.map(({ name }) => name)).toEqual(files.map(({ name }) => name).sort());
    expect(now.inputs.every(({ sha256 }) => /^[0-9a-f]{64}$/.test(sha256))).toBe(true);
  });

  it('advises measurements with instrument, method and minutes', () => {
    expect(now.nextMeasurements.length).toBeGreaterThanOrEqual(3);
    for (const advice of now.nextMeasurements) {
      expect(advice.minutes).toBeGreaterThan(0);
      expect([advice.label, advice.why, advice.instrument, advice.method]).not.toContain('');
    }
  });

  it('a change that is tried moves the result and its hash, and nothing else the files say', () => {
    const lighter = assessed(['feature.mass=500 g']);
    const runtime = (of: Assessment) => of.candidates.find(({ id }) => id === of.baseline)!.nominal.runtimeS!;
    expect(runtime(lighter)).toBeGreaterThan(runtime(now));
    expect(lighter.inputHash).not.toBe(now.inputHash);
    expect(lighter.inputs).toEqual(now.inputs);
  });

  it('gives the same assessment for the same files, in whatever order they come', () => {
    expect(assessed([], [...files].reverse())).toEqual(now);
  });

  it('names every limit of every candidate once', () => {
    for (const { limits } of now.candidates) {
      const names = limits.map(({ criterion }) => criterion);
      expect(names).toEqual([...new Set(names)]);
    }
  });
});

describe('a starter study', { timeout: 120_000 }, () => {
  it.each([[], ['position-servo'], ['worm-gearmotor'], ['screw-actuator']])(
    'of %s can be judged as it stands',
    (...kinds) => {
      const started = starter(kinds.filter((kind) => typeof kind === 'string'));
      if ('unknown' in started) throw new Error('a known type is unknown');
      const text = checkText(assessed([], started.files), 80);
      expect(text).toMatch(/Figures: \d+ yours, \d+ assumed\./);
    },
  );

  it('of a type nobody knows names those there are', () => {
    expect(starter(['stepper'])).toMatchObject({ unknown: ['stepper'] });
  });
});

describe('the working of a demo candidate', () => {
  it.each(['servo-now', 'worm-driver', 'screw-strut'])('of %s fits into 80 columns', (id) => {
    const result = explainCandidate(request(files), id);
    if (!result.ok || !result.value.found) throw new Error('not found');
    const lines = workingText(result.value.label, result.value.lines, 80).split('\n');
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
    expect(lines.length).toBeGreaterThan(40);
  });

  it('of nobody names the nearest', () => {
    expect(explainCandidate(request(files), 'worm-drive')).toMatchObject({
      ok: true,
      value: { found: false, nearest: 'worm-driver' },
    });
  });

  it('of a broken study is not begun', () => {
    expect(explainCandidate(request([]), 'worm-driver').ok).toBe(false);
  });
});
