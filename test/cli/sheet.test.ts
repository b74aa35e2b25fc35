import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { changedDemo, demo, emptyFolder, holdwright, namesIn } from './program.js';

describe('sheet', { timeout: 120_000 }, () => {
  const out = join(emptyFolder(), 'deep', 'sheet');
  let first: ReturnType<typeof holdwright>;
  beforeAll(() => {
    first = holdwright(['sheet', demo, '--out', out]);
  }, 120_000);

  it('writes one PDF and nothing else, and says where it is and what it says first', () => {
    expect([first.code, first.stderr]).toEqual([0, '']);
    expect(namesIn(out)).toEqual(['safety-sheet.pdf']);
    expect(readFileSync(join(out, 'safety-sheet.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    for (const words of [
      join(out, 'safety-sheet.pdf'),
      'Without power: ',
      'It can crush with: ',
      'The tip moves at: ',
    ])
      expect(first.stdout.replaceAll('\n  ', ' ')).toContain(words);
  });

  it('with --json gives the same sheet and its figures', () => {
    const again = join(emptyFolder(), 'sheet');
    const { code, stdout } = holdwright(['sheet', demo, '--out', again, '--json'], {
      env: { TZ: 'Asia/Tokyo' },
    });
    const figures = JSON.parse(stdout);
    const { safety } = figures;
    expect([code, figures.format, safety.candidate, safety.isBuilt]).toEqual([
      0,
      'holdwright-sheet/1',
      'servo-now',
      true,
    ]);
    for (const key of ['extents', 'powerCut', 'motion', 'crush', 'push', 'pack', 'heat', 'cautions'])
      expect(safety).toHaveProperty(key);
    expect(
      readFileSync(join(again, 'safety-sheet.pdf')).equals(readFileSync(join(out, 'safety-sheet.pdf'))),
    ).toBe(true);
  });

  it('of a candidate nobody knows ends with 2 and the nearest, and writes nothing', () => {
    const folder = emptyFolder();
    const { code, stdout, stderr } = holdwright([
      'sheet',
      demo,
      '--out',
      join(folder, 'x'),
      '--candidate',
      'worm-drivr',
    ]);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/there is no candidate “worm-drivr”[\s\S]*did you mean worm-driver\?/);
    expect(namesIn(folder)).toEqual([]);
  });

  it('of a study without a baseline asks which drive', () => {
    const study = changedDemo('study.csv', (text) => text.replace(/^baseline,.*$/m, ''));
    const { code, stderr } = holdwright(['sheet', study, '--out', emptyFolder()]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/names no baseline[\s\S]*say which drive with --candidate/);
  });

  it('that cannot be written ends with 4', () => {
    const file = join(emptyFolder(), 'file');
    writeFileSync(file, 'mine');
    const { code, stdout } = holdwright(['sheet', demo, '--out', join(file, 'sheet')]);
    expect([code, stdout]).toEqual([4, '']);
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  it('is completed with its flags', () => {
    const { stdout } = holdwright(['completion', 'bash']);
    expect(stdout).toMatch(
      /'sheet '-\*\) words='--templates --units --out --candidate --page --json --help'/,
    );
    expect(stdout).toContain("'sheet --page') words='a4 letter'");
  });
});
