import { spawnSync } from 'node:child_process';
import { appendFileSync, cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { changedDemo, demo, emptyFolder, holdwright, namesIn } from './program.js';

const env = { SOURCE_DATE_EPOCH: '1773489600' };
const first = '2026-03-14-adopt-worm-driver';
const second = '2026-05-02-keep-servo-now';

/** An archive with two records about the demo; copied by whoever damages it. */
const archive = join(emptyFolder(), 'my records');

const decide = (study: string, choose: string, decision: string, into: string, ...more: string[]) =>
  holdwright(
    [
      'decide',
      study,
      '--choose',
      choose,
      '--decision',
      decision,
      '--because',
      'it holds',
      '--archive',
      into,
      ...more,
    ],
    { env },
  );

function archiveCopy(): string {
  const copy = join(emptyFolder(), 'records');
  cpSync(archive, copy, { recursive: true });
  return copy;
}

describe('the record', { timeout: 120_000 }, () => {
  beforeAll(() => {
    const adopted = decide(demo, 'worm-driver', 'adopt', archive, '--look-again', '2026-04-01');
    expect([adopted.code, adopted.stderr]).toEqual([0, '']);
    const heavier = changedDemo('study.csv', (text) => text.replace('860 g ±25 g', '990 g ±25 g'));
    const kept = decide(
      heavier,
      'servo-now',
      'keep',
      archive,
      '--date',
      '2.5.2026',
      '--supersedes',
      first,
      '--json',
    );
    expect([kept.code, kept.stderr]).toEqual([0, '']);
    expect(JSON.parse(kept.stdout)).toMatchObject({ record: { id: second, supersedes: first } });
  }, 120_000);

  it('is filed with inputs, report and results, and the checksum tool of the system agrees', () => {
    expect(namesIn(archive)).toEqual([first, second, 'ledger.json']);
    const folder = join(archive, first);
    expect(namesIn(join(folder, 'data'))).toEqual(
      expect.arrayContaining(['assumptions.csv', 'decision.json', 'inputs', 'report.pdf', 'results.json']),
    );
    for (const name of namesIn(join(folder, 'data', 'inputs')))
      expect(
        readFileSync(join(folder, 'data/inputs', name)).equals(readFileSync(join(demo, name))),
        name,
      ).toBe(true);
    const { status } = spawnSync('sha256sum', ['--quiet', '-c', 'manifest-sha256.txt'], { cwd: folder });
    expect(status).toBe(0);
  });

  it('is listed with its state; what is due is marked', () => {
    const { code, stdout, stderr } = holdwright(['records', archive], { env });
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(stdout).toMatch(new RegExp(`^${first} +Worm, position driver +2026-04-01 superseded$`, 'm'));
    expect(stdout).toMatch(new RegExp(`^${second} +Servo as built +– +sound$`, 'm'));
    const later = holdwright(['records', archive, '--json'], { env: { SOURCE_DATE_EPOCH: '1800000000' } });
    expect(JSON.parse(later.stdout).records.map(({ id }: { id: string }) => id)).toEqual([first, second]);
  });

  it('opened again says that nothing moved, and against another study what did', () => {
    const same = holdwright(['reopen', join(archive, first)], { env });
    expect([same.code, same.stderr]).toEqual([0, '']);
    expect(same.stdout).toMatch(/Results +nothing moved/);
    const lighter = changedDemo('study.csv', (text) => text.replace('860 g ±25 g', '400 g ±25 g'));
    const moved = holdwright(['reopen', join(archive, first), '--study', lighter, '--json'], { env });
    expect([moved.code, moved.stderr]).toEqual([0, '']);
    const { values, figures } = JSON.parse(moved.stdout);
    expect(values.map(({ name }: { name: string }) => name)).toEqual(['feature.mass']);
    expect(figures.length).toBeGreaterThan(0);
  });

  it('compared with another says what each change did', () => {
    const records = [join(archive, first), join(archive, second)];
    const { code, stdout, stderr } = holdwright(['compare', ...records], { env });
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/feature\.mass: 860 g/);
    expect(stdout).toMatch(/all together/);
    expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
    const data = JSON.parse(holdwright(['compare', ...records, '--json'], { env }).stdout);
    expect(data.changes.map(({ name }: { name: string }) => name)).toEqual(['feature.mass']);
    expect(holdwright(['compare', ...records, '--candidate', 'servo-nou']).code).toBe(2);
  });

  it('takes what was measured on the day into a file beside it', () => {
    const copy = archiveCopy();
    const args = ['records', copy, '--log', second, 'runtime=60 min', 'hold_current=0.5 A', '--note', 'cold'];
    const { code, stdout, stderr } = holdwright(args, { env });
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^runtime +[\d.]+ min +[\d.]+–[\d.]+ min +60 min +[+−]\d+ % {2}inside$/m);
    expect(namesIn(copy)).toEqual([first, second, `${second}.log-1.json`, 'ledger.json'].sort());
    const listed = holdwright(['records', copy], { env });
    expect([listed.code, listed.stdout]).toEqual([0, expect.stringContaining('(predicted')]);
  });

  it('that is damaged is told file by file with 3, and not opened', () => {
    const copy = archiveCopy();
    appendFileSync(join(copy, first, 'data/report.pdf'), 'x');
    writeFileSync(join(copy, second, 'data/evil.csv'), '');
    const listed = holdwright(['records', copy], { env });
    expect(listed.code).toBe(3);
    expect(listed.stderr).toMatch(new RegExp(`${first}/data/report\\.pdf: is not what was filed`));
    expect(listed.stderr).toMatch(new RegExp(`${second}/data/evil\\.csv: was not filed with the record`));
    expect(listed.stdout).toMatch(/2 records, 2 damaged/);
    expect(holdwright(['reopen', join(copy, first)]).code).toBe(3);
    expect(holdwright(['compare', join(copy, first), join(copy, second)]).code).toBe(3);
  });

  it('whose ledger is gone can be listed anew', () => {
    const copy = archiveCopy();
    const before = readFileSync(join(copy, 'ledger.json'), 'utf8');
    writeFileSync(join(copy, 'ledger.json'), 'spilt coffee');
    expect(holdwright(['records', copy], { env }).code).toBe(3);
    const rebuilt = holdwright(['records', copy, '--rebuild'], { env });
    expect([rebuilt.code, rebuilt.stderr]).toEqual([0, expect.stringContaining('was made anew')]);
    expect(readFileSync(join(copy, 'ledger.json'), 'utf8')).toBe(before);
  });
});

describe('a decision that is not filed', { timeout: 120_000 }, () => {
  it.each([
    ['without a reason', ['--choose', 'x', '--decision', 'adopt', '--archive', 'a']],
    ['by a word nobody knows', ['--choose', 'x', '--decision', 'adore', '--because', 'b', '--archive', 'a']],
  ])('%s is wrong usage', (_, args) => {
    const { code, stdout } = holdwright(['decide', demo, ...args], { cwd: emptyFolder() });
    expect([code, stdout]).toEqual([2, '']);
  });

  it('about a stranger names the nearest and everything else that is wrong, and makes no folder', () => {
    const folder = join(emptyFolder(), 'records');
    const { code, stdout, stderr } = decide(demo, 'worm-drivr', 'adopt', folder, '--look-again', 'soon');
    expect([code, stdout, existsSync(folder)]).toEqual([2, '', false]);
    expect(stderr).toMatch(/did you mean worm-driver\?/);
    expect(stderr).toMatch(/--look-again: “soon” is not a date/);
  });

  it('into a file ends with 4', () => {
    const file = join(emptyFolder(), 'file');
    writeFileSync(file, 'mine');
    const { code, stdout } = decide(demo, 'worm-driver', 'adopt', join(file, 'records'));
    expect([code, stdout]).toEqual([4, '']);
  });
});

describe('records, reopen and compare of what is not there', () => {
  it.each([
    ['records', ['nowhere'], 3],
    ['reopen', ['nowhere'], 3],
    ['compare', ['nowhere', 'nobody'], 3],
    ['records', ['.', 'runtime=1 min'], 2],
    ['records', ['.', '--log', 'x', '--rebuild'], 2],
    ['records', ['.', '--log', 'x', 'runtime=1 min'], 2],
    ['compare', ['one'], 2],
  ])('%s %j ends with %i', (command, args, expected) => {
    const { code, stdout, stderr } = holdwright([command, ...args], { cwd: emptyFolder() });
    expect([code, stdout]).toEqual([expected, '']);
    expect(stderr).not.toMatch(/mistake/);
  });
});
