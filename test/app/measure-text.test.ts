import { beforeAll, describe, expect, it } from 'vitest';
import { checkText } from '../../src/app/check-text.js';
import { measureText } from '../../src/app/measure-text.js';
import { assessStudy } from '../../src/app/study.js';
import type { Assessment } from '../../src/assess/assessment.js';
import { demoFile, demoFiles, request } from './demo.js';

function assessed(files = demoFiles('lantern-parade'), changes: string[] = []): Assessment {
  const result = assessStudy(request(files, changes), 'ranking');
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
}

const example = demoFile('lantern-parade', 'measured.csv.example');

describe('the measuring sheet', { timeout: 120_000 }, () => {
  let found: Assessment;
  let lines: string[];
  beforeAll(() => {
    found = assessed();
    lines = measureText(found, 80).split('\n');
  });

  it('names what to measure, with what, how exactly, and where the answer goes', () => {
    const text = lines.join('\n');
    expect(text).toMatch(/^1\. \w+ of Servo as built/m);
    expect(text).toMatch(/With: .+, \d+ min, to ±\d+ [%K]/);
    expect(text).toMatch(/Goes into: \w+ in measured\.csv\./);
  });

  it('leaves a line to fill in for each', () => {
    const asked = lines.filter((line) => /^\d+\. /.test(line)).length;
    const further = lines.filter((line) => /^[a-z_]+: /.test(line)).length;
    expect(lines.filter((line) => line.includes('Value ____'))).toHaveLength(asked + further);
    expect(asked).toBeGreaterThanOrEqual(3);
  });

  it('stays within the width of the page', () => {
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  it('asks for every reading on the drive of today, once', () => {
    const text = lines.join('\n');
    for (const quantity of ['runtime', 'hold_current', 'rest_current', 'move_time', 'loop_charge'])
      expect(text.match(new RegExp(`^(\\d+\\. )?${quantity}( of Servo as built)?:`, 'gm'))).toHaveLength(1);
  });

  it('asks for nothing where nothing would move the comparison, and says so', () => {
    const study = { ...found.study, baselineId: null };
    expect(measureText({ ...found, study, nextMeasurements: [] }, 80)).toMatch(/No single measurement would/);
  });
});

describe('what check says', { timeout: 120_000 }, () => {
  it('is the verdict with its confidence, and how surely each candidate passes', () => {
    const found = assessed();
    const text = checkText(found, 200);
    expect(text).toContain(found.verdict.sentence);
    expect(text).toContain(`Likely: ${found.verdict.confidence.sentence}`);
    expect(text).toMatch(/^servo-now passes on paper; every limit holds in \d+ % of the draws$/m);
  });

  it('tells that the draws agree with what was measured, or that they cannot', () => {
    const files = demoFiles('lantern-parade');
    const good = assessed([...files, { name: 'measured.csv', bytes: example }]);
    expect(checkText(good, 200)).toMatch(
      /those that agree with the measured runtime, hold current are worth [\d,]+ of 32,768/,
    );
    const bytes = new TextEncoder().encode('quantity,value\nruntime,900 min\n');
    const bad = assessed([...files, { name: 'measured.csv', bytes }]);
    expect(checkText(bad, 200)).toMatch(/Measured runtime and what is computed cannot both be right/);
  });
});
