import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { changedDemo, demo, emptyFolder, holdwright, namesIn } from './program.js';

const brokenDemo = () =>
  changedDemo('candidates.csv', (text) => text.replace('no_load_speed', 'no_lod_speed'));

describe('errors in the input', { timeout: 120_000 }, () => {
  it.each(['check', 'rank'])(
    'end %s with 3, place and nearest name, and nothing on standard output',
    (command) => {
      const { code, stdout, stderr } = holdwright([command, brokenDemo()]);
      expect([code, stdout]).toEqual([3, '']);
      expect(stderr).toMatch(/candidates\.csv/);
      expect(stderr).toMatch(/no_load_speed/);
      expect(stderr).toMatch(/\d+ errors?/);
    },
  );

  it('end report with 3 and write nothing, not even the folder', () => {
    const folder = emptyFolder();
    expect(holdwright(['report', brokenDemo(), '--out', join(folder, 'report')]).code).toBe(3);
    expect(namesIn(folder)).toEqual([]);
  });

  it('leave an earlier report untouched', () => {
    const out = emptyFolder();
    writeFileSync(join(out, 'report.pdf'), 'earlier');
    writeFileSync(join(out, 'results.json'), '{}');
    expect(holdwright(['report', brokenDemo(), '--out', out]).code).toBe(3);
    expect(namesIn(out)).toEqual(['report.pdf', 'results.json']);
    expect(readFileSync(join(out, 'report.pdf'), 'utf8')).toBe('earlier');
  });

  it('are told all at once', () => {
    const folder = changedDemo('show.csv', (text) => text.replace(/hold,/, 'hodl,'));
    writeFileSync(join(folder, 'packs.csv'), 'id,chemistry,cells,capacity\nP,lipo,two,1300 mAh\n');
    const { stderr } = holdwright(['check', folder]);
    expect(stderr).toMatch(/show\.csv/);
    expect(stderr).toMatch(/packs\.csv/);
  });

  it('never let a file steer the terminal', () => {
    const folder = changedDemo('candidates.csv', (text) =>
      text.replace('servo-now,', '\u001b[31mservo\u0007-now,'),
    );
    const { stdout, stderr } = holdwright(['check', folder]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
    expect(stdout + stderr).not.toMatch(/[\u0000-\u0008\u000b-\u001f]/);
  });

  it.each([
    ['a workbook', 'PK\u0003\u0004', /workbook.*save it as CSV|save it as CSV/s],
    ['a PDF', '%PDF-1.7', /is a PDF/],
  ])('%s under the name of a table, with what to do', (_, start, words) => {
    const folder = changedDemo('packs.csv', () => start);
    const { code, stderr } = holdwright(['check', folder]);
    expect(code).toBe(3);
    expect(stderr).toMatch(words);
    expect(stderr).toMatch(/1 error\n$/);
  });

  it('a workbook beside the tables, as a warning', () => {
    const folder = changedDemo('study.csv', (text) => `${text}\n`);
    writeFileSync(join(folder, 'study.xlsx'), 'PK');
    const { code, stderr } = holdwright(['explain', folder, 'worm-driver']);
    expect(code).toBe(0);
    expect(stderr).toMatch(/study\.xlsx is a workbook and was not read/);
  });

  it('stops in the wrong order, once and not at every cue', () => {
    const folder = changedDemo('study.csv', (text) =>
      text.replace(/^feature\.lower_stop,[^,]*/m, 'feature.lower_stop,80'),
    );
    expect(holdwright(['check', folder]).stderr).toMatch(/^1 error$/m);
  });

  it('a file or an empty folder in place of a study', () => {
    const file = join(emptyFolder(), 'file');
    writeFileSync(file, 'mine');
    expect(holdwright(['check', file]).stderr).toMatch(/a folder is expected/);
    expect(holdwright(['check', emptyFolder()]).stderr).toMatch(/no CSV file.*holdwright new/s);
  });

  it('a folder that is not there', () => {
    const { code, stderr } = holdwright(['rank', join(emptyFolder(), 'nowhere')]);
    expect(code).toBe(3);
    expect(stderr).toMatch(/there is no folder/);
  });

  it('an unknown item after --set', () => {
    const { code, stderr } = holdwright(['rank', demo, '--set', 'feature.mas=1 kg']);
    expect(code).toBe(3);
    expect(stderr).toMatch(/feature\.mass/);
  });
});

describe('wrong usage ends with 2', () => {
  it.each([
    ['no command', []],
    ['an unknown command', ['rnak', demo]],
    ['an unknown flag', ['rank', demo, '--jason']],
    ['a report without a place to go', ['report', demo]],
    ['a page size nobody has', ['report', demo, '--out', 'x', '--page', 'a7']],
    ['a study too few', ['check']],
    ['a drive type nobody knows', ['new', 'x', '--drive', 'stepper']],
  ])('%s', (_, args) => {
    const { code, stdout, stderr } = holdwright(args, { cwd: emptyFolder() });
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).not.toBe('');
  });

  it('a candidate nobody knows, with the nearest', () => {
    const { code, stderr } = holdwright(['explain', demo, 'servo-nou']);
    expect(code).toBe(2);
    expect(stderr).toMatch(/did you mean servo-now\?/);
  });
});

describe('what cannot be written ends with 4', { timeout: 120_000 }, () => {
  it('a report under a file', () => {
    const file = join(emptyFolder(), 'file');
    writeFileSync(file, 'mine');
    const { code, stdout } = holdwright(['report', demo, '--out', join(file, 'report')]);
    expect([code, stdout]).toEqual([4, '']);
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  it('a report where a folder has the name of the PDF: neither file is touched', () => {
    const out = emptyFolder();
    mkdirSync(join(out, 'report.pdf', 'inside'), { recursive: true });
    writeFileSync(join(out, 'results.json'), 'earlier');
    expect(holdwright(['report', demo, '--out', out]).code).toBe(4);
    expect(readFileSync(join(out, 'results.json'), 'utf8')).toBe('earlier');
    expect(namesIn(out)).toEqual(['report.pdf', 'results.json']);
  });

  it('a new study under a file', () => {
    const file = join(emptyFolder(), 'file');
    writeFileSync(file, 'mine');
    const { code, stderr } = holdwright(['new', join(file, 'study')]);
    expect(code).toBe(4);
    expect(stderr).toMatch(/a file stands where a folder should be/);
  });

  it('a new study over a twin in other case, which many systems take for the same file', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'Study.CSV'), 'mine');
    expect(holdwright(['new', folder]).code).toBe(4);
    expect(namesIn(folder)).toEqual(['Study.CSV']);
  });

  it('a new study over files that are there', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'study.csv'), 'mine');
    expect(holdwright(['new', folder]).code).toBe(4);
    expect(namesIn(folder)).toEqual(['study.csv']);
    expect(readFileSync(join(folder, 'study.csv'), 'utf8')).toBe('mine');
  });
});

describe('check --require-pass', { timeout: 120_000 }, () => {
  it('ends with 5 where no candidate passes every limit, and says why for each', () => {
    const folder = changedDemo(
      'criteria.csv',
      (text) => `${text.trimEnd()}\nnoise,0,,,at most 1 dB,silence\n`,
    );
    const { code, stdout } = holdwright(['check', folder, '--require-pass']);
    expect(code).toBe(5);
    expect(stdout).toMatch(/fails: noise|lacks noise/);
  });

  it('without the flag a failing study is no error', () => {
    const folder = changedDemo(
      'criteria.csv',
      (text) => `${text.trimEnd()}\nnoise,0,,,at most 1 dB,silence\n`,
    );
    expect(holdwright(['check', folder]).code).toBe(0);
  });
});
