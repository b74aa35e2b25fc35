import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { changedDemo, demo, emptyFolder, holdwright, namesIn } from './program.js';

const has = (tool: string) => spawnSync('sh', ['-c', `command -v ${tool}`]).status === 0;

describe('report', { timeout: 120_000 }, () => {
  const out = join(emptyFolder(), 'deep', 'report');
  let first: ReturnType<typeof holdwright>;
  beforeAll(() => {
    first = holdwright(['report', demo, '--out', out]);
  }, 120_000);

  it('writes a PDF and the results, and nothing else', () => {
    expect([first.code, first.code === 0 ? '' : first.stderr]).toEqual([0, '']);
    expect(namesIn(out)).toEqual(['report.pdf', 'results.json']);
    expect(readFileSync(join(out, 'report.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    expect(JSON.parse(readFileSync(join(out, 'results.json'), 'utf8')).format).toBe('holdwright-results/1');
  });

  it('says where the PDF is', () => {
    expect(first.stdout).toContain(join(out, 'report.pdf'));
  });

  it('is the same, byte for byte, for the same inputs', () => {
    const again = join(emptyFolder(), 'report');
    holdwright(['report', demo, '--out', again], { env: { TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8' } });
    for (const name of ['report.pdf', 'results.json']) {
      expect(readFileSync(join(again, name)).equals(readFileSync(join(out, name))), name).toBe(true);
    }
  });

  it('of a study without a date carries the moment in SOURCE_DATE_EPOCH', () => {
    const dated = join(emptyFolder(), 'report');
    const undated = changedDemo('study.csv', (text) => text.replace(/^date,.*$/m, ''));
    holdwright(['report', undated, '--out', dated], { env: { SOURCE_DATE_EPOCH: '86400' } });
    expect(readFileSync(join(dated, 'report.pdf')).toString('latin1')).toContain('D:19700102');
  });

  it('replaces an earlier report', () => {
    const before = readFileSync(join(out, 'report.pdf'));
    expect(holdwright(['report', demo, '--out', out, '--page', 'letter']).code).toBe(0);
    expect(namesIn(out)).toEqual(['report.pdf', 'results.json']);
    expect(readFileSync(join(out, 'report.pdf')).equals(before)).toBe(false);
  });

  it.skipIf(!has('pdftotext'))('is text that can be searched (skipped where pdftotext is missing)', () => {
    const { stdout } = spawnSync('pdftotext', ['-layout', join(out, 'report.pdf'), '-'], {
      encoding: 'utf8',
    });
    const results = JSON.parse(readFileSync(join(out, 'results.json'), 'utf8'));
    for (const { label } of results.candidates) expect(stdout).toContain(label.split(' ')[0]);
  });

  it.skipIf(!has('qpdf'))('is a well-formed PDF (skipped where qpdf is missing)', () => {
    const { status, stdout, stderr } = spawnSync('qpdf', ['--check', join(out, 'report.pdf')], {
      encoding: 'utf8',
    });
    expect(status, stdout + stderr).toBe(0);
  });
});

describe('results', { timeout: 120_000 }, () => {
  it('on standard output are those that a report writes', () => {
    const out = join(emptyFolder(), 'report');
    holdwright(['report', demo, '--out', out]);
    expect(existsSync(join(out, 'results.json'))).toBe(true);
    const { issues, ...printed } = JSON.parse(holdwright(['rank', demo, '--json']).stdout);
    expect([issues, printed]).toEqual([[], JSON.parse(readFileSync(join(out, 'results.json'), 'utf8'))]);
  });
});
