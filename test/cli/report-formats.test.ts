import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { changedDemo, emptyFolder, holdwright, namesIn } from './program.js';

const study = changedDemo('study.csv', (text) => `${text.trimEnd()}\ndraws,60\n`);
const report = (...flags: string[]) => {
  const out = join(emptyFolder(), 'out');
  return { ...holdwright(['report', study, '--out', out, ...flags]), out };
};

describe('the formats of report', { timeout: 120_000 }, () => {
  it.each([
    [
      ['--format', 'html'],
      ['report.html', 'results.json'],
    ],
    [
      ['--format', 'both'],
      ['report.html', 'report.pdf', 'results.json'],
    ],
    [
      ['--format', 'pdf,html'],
      ['report.html', 'report.pdf', 'results.json'],
    ],
    [
      ['--format', 'html', '--format', 'pdf'],
      ['report.html', 'report.pdf', 'results.json'],
    ],
  ])('%j writes %j and names them', (flags, names) => {
    const { code, stdout, out } = report(...flags);
    expect([code, namesIn(out)]).toEqual([0, names]);
    for (const name of names.filter((one) => one.startsWith('report')))
      expect(stdout).toContain(join(out, name));
  });

  it('the same study gives the same page, byte for byte', () => {
    const [one, other] = [report, report].map((make) =>
      readFileSync(join(make('--format', 'html', '--interactive').out, 'report.html')),
    );
    expect(Buffer.compare(one!, other!)).toBe(0);
  });

  it('a format that nobody knows is wrong usage, and the known ones are named', () => {
    const { code, stderr, out } = report('--format', 'docs');
    expect([code, namesIn(out)]).toEqual([2, []]);
    expect(stderr).toContain('There is no format docs; choose from pdf, html, both.');
  });

  it('what only a page can do is wrong usage without one', () => {
    const { code, stderr, out } = report('--interactive');
    expect([code, namesIn(out)]).toEqual([2, []]);
    expect(stderr).toContain('without --format html');
  });
});
