import { describe, expect, it } from 'vitest';
import { reportDate } from '../../src/cli/clock.js';
import { startProgress } from '../../src/cli/progress.js';
import { type Terminal, wantsColour } from '../../src/cli/terminal.js';
import { demo, holdwright } from './program.js';

describe('a ranking on a terminal', { timeout: 120_000 }, () => {
  const { stdout, stderr } = holdwright(['rank', demo]);

  it('keeps within 80 columns where nobody says how wide it is', () => {
    expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('has no colour off a terminal, nor with NO_COLOR', () => {
    expect(stdout).not.toContain('\u001b');
    expect(holdwright(['rank', demo], { env: { NO_COLOR: '1', FORCE_COLOR: '1' } }).stdout).not.toContain(
      '\u001b',
    );
  });

  it('talks about nothing when nobody watches', () => {
    expect(stderr.split('\n').filter((line) => !/^(warning| {2}|\d+ warning|$)/.test(line))).toEqual([]);
  });
});

describe('colour', () => {
  it.each([
    ['on a terminal', {}, true, true],
    ['not off a terminal', {}, undefined, false],
    ['where FORCE_COLOR asks for it', { FORCE_COLOR: '1' }, undefined, true],
    ['never against NO_COLOR', { NO_COLOR: '1', FORCE_COLOR: '1' }, true, false],
    ['where NO_COLOR is empty, which does not count', { NO_COLOR: '' }, true, true],
    ['not on a dumb terminal', { TERM: 'dumb' }, true, false],
  ])('%s', (_, env, isTerminal, wanted) => {
    expect(wantsColour(env, isTerminal)).toBe(wanted);
  });
});

describe('the date of a report', () => {
  const now = () => new Date(Date.UTC(2030, 0, 2, 3, 4, 5));

  it.each([
    ['is the study’s own date', { SOURCE_DATE_EPOCH: '0' }, '2026-03-14', '2026-03-14T00:00:00Z'],
    [
      'is SOURCE_DATE_EPOCH for a study without one',
      { SOURCE_DATE_EPOCH: '86400' },
      '',
      '1970-01-02T00:00:00Z',
    ],
    ['is now where neither is set', {}, '', '2030-01-02T03:04:05Z'],
    ['is not an epoch that is no number', { SOURCE_DATE_EPOCH: 'soon' }, '', '2030-01-02T03:04:05Z'],
  ])('%s', (_, env, studyDate, date) => {
    expect(reportDate(env, studyDate, now)).toBe(date);
  });
});

describe('progress', () => {
  const terminal = (watched: boolean, lines: string[]): Terminal => ({
    result() {},
    talk() {},
    line: (text) => void lines.push(text),
    width: 80,
    colour: false,
    watched,
  });

  it('is one line after half a second, taken away at the end', async () => {
    const lines: string[] = [];
    const progress = startProgress(terminal(true, lines));
    progress.step('computing');
    expect(lines).toEqual([]);
    await new Promise((resolve) => setTimeout(resolve, 600));
    progress.end();
    expect(lines).toEqual(['computing …', '']);
  });

  it('is silent where nobody watches, and for work that is soon done', async () => {
    const lines: string[] = [];
    for (const watched of [true, false]) {
      const progress = startProgress(terminal(watched, lines));
      progress.step('computing');
      progress.end();
    }
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(lines).toEqual([]);
  });
});
