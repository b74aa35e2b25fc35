import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { answeringShell } from '../../src/cli/answer.js';
import { helperThreads } from '../../src/cli/helper-threads.js';
import { programFor } from '../../src/cli/program.js';
import { changedDemo, emptyFolder, holdwright } from './program.js';

/** Commands without `--json`, each with its reason. */
const withoutJson: Record<string, string> = {
  completion: 'prints a script for a shell, which is no data',
};

const commands = programFor(
  answeringShell({
    terminal: { result() {}, talk() {}, line() {}, width: 80, colour: false, watched: false },
    env: {},
    now: () => new Date(0),
    helpers: helperThreads('1'),
    version: '0.0.0',
    end() {},
  }),
).commands.map((command) => command.name());

const quickDemo = () => changedDemo('study.csv', (text) => `${text.trimEnd()}\ndraws,128,,\n`);
const study = quickDemo();
const archive = join(emptyFolder(), 'records');
const record = '2026-03-14-postpone-worm-driver';
const filing = ['--choose', 'worm-driver', '--decision', 'postpone', '--because', 'later', '--archive'];
const env = { SOURCE_DATE_EPOCH: '1773489600' };

/** A run of each command that ends well, and the keys of its answer that somebody will look for. */
const runs: Record<string, { args: string[]; keys: string[] }[]> = {
  new: [
    { args: ['new', join(emptyFolder(), 'begun')], keys: ['folder', 'files'] },
    { args: ['new', join(emptyFolder(), 'read'), '--fields'], keys: ['folder', 'files'] },
  ],
  check: [{ args: ['check', study], keys: ['verdict', 'candidates', 'figuresGiven', 'nextMeasurements'] }],
  measure: [{ args: ['measure', study], keys: ['measurements', 'checks'] }],
  rank: [{ args: ['rank', study], keys: ['candidates', 'verdict', 'inputHash'] }],
  report: [{ args: ['report', study, '--out', emptyFolder()], keys: ['folder', 'files', 'verdict'] }],
  sheet: [{ args: ['sheet', study, '--out', emptyFolder()], keys: ['folder', 'files', 'safety'] }],
  explain: [{ args: ['explain', study, 'worm-driver'], keys: ['candidate', 'lines'] }],
  decide: [{ args: ['decide', study, ...filing, join(emptyFolder(), 'other')], keys: ['record', 'seal'] }],
  records: [
    { args: ['records', archive], keys: ['records'] },
    { args: ['records', archive, '--log', record, 'runtime=70 min'], keys: ['log', 'file'] },
  ],
  reopen: [{ args: ['reopen', join(archive, record)], keys: ['files', 'ranking', 'verdict'] }],
  compare: [
    { args: ['compare', join(archive, record), join(archive, `${record}-2`)], keys: ['changes', 'together'] },
  ],
};

const issueKeys = ['code', 'severity', 'file', 'line', 'column', 'received', 'expected', 'message', 'hint'];

describe('--json', { timeout: 120_000 }, () => {
  beforeAll(() => {
    for (let count = 0; count < 2; count++)
      expect(holdwright(['decide', study, ...filing, archive], { env }).code).toBe(0);
  }, 120_000);

  it('is run here for every command there is, or says why there is none', () => {
    expect([...Object.keys(runs), ...Object.keys(withoutJson)].sort()).toEqual([...commands].sort());
  });

  it.each(Object.values(runs).flat())(
    'answers $args.0 with one object and nothing else',
    ({ args, keys }) => {
      const { code, stdout } = holdwright([...args, '--json'], { env });
      const answer = JSON.parse(stdout);
      const format = args[0] === 'rank' ? 'results' : args[0];
      expect([code, answer.format]).toEqual([0, `holdwright-${format}/1`]);
      expect(Object.keys(answer)).toEqual(expect.arrayContaining(['issues', ...keys]));
    },
  );

  it('tells warnings as data, and in words on standard error', () => {
    const folder = changedDemo('candidates.csv', (text) =>
      text.replace('Servo as built', 'Servo\u200b as built'),
    );
    const { code, stdout, stderr } = holdwright(['measure', folder, '--json']);
    const [issue] = JSON.parse(stdout).issues;
    expect([code, issue.code, issue.severity, issue.file, issue.column]).toEqual([
      0,
      'control-characters',
      'warning',
      'candidates.csv',
      'label',
    ]);
    expect(Object.keys(issue)).toEqual(issueKeys);
    expect(stderr).toMatch(/^warning: candidates\.csv:/m);
  });

  const broken = changedDemo('show.csv', (text) => text.replace(/hold,/, 'hodl,'));

  it.each([
    ['check', [broken], 3, 'unknown-choice'],
    ['rank', [broken], 3, 'unknown-choice'],
    ['measure', [broken], 3, 'unknown-choice'],
    ['explain', [broken, 'worm-driver'], 3, 'unknown-choice'],
    ['report', [broken, '--out', 'nowhere'], 3, 'unknown-choice'],
    ['decide', [broken, ...filing, 'nowhere'], 3, 'unknown-choice'],
    ['check', ['nowhere'], 3, 'missing-folder'],
    ['records', ['nowhere'], 3, 'missing-folder'],
    ['reopen', ['nowhere'], 3, 'unknown-record'],
    ['compare', ['nowhere', 'elsewhere'], 3, 'unknown-record'],
    ['explain', [study, 'worm-driven'], 2, 'unknown-candidate'],
    ['decide', [study, ...filing.with(1, 'worm-driven'), 'nowhere'], 2, 'unknown-candidate'],
    ['new', ['begun', '--drive', 'worm-gear'], 2, 'unknown-drive-type'],
  ])('holds the issues that stop %s %j: exit code %i, %s', (command, args, exitCode, issueCode) => {
    const { code, stdout, stderr } = holdwright([command, ...args, '--json'], { cwd: emptyFolder() });
    const answer = JSON.parse(stdout);
    expect([code, answer.format]).toEqual([exitCode, `holdwright-${command}/1`]);
    expect(answer.issues.map((issue: { code: string }) => issue.code)).toContain(issueCode);
    for (const issue of answer.issues) expect(Object.keys(issue)).toEqual(issueKeys);
    expect(stderr).toMatch(/^error: /m);
  });

  it('says with exit code 4 what could not be written, and where', () => {
    const out = join(emptyFolder(), 'file');
    writeFileSync(out, 'mine');
    const { code, stdout } = holdwright(['report', study, '--out', out, '--json']);
    const { issues } = JSON.parse(stdout);
    expect([code, issues[0].code, issues[0].file]).toEqual([4, 'unwritable', out]);
  });

  it('is nothing but escapes where a text could steer a terminal', () => {
    const folder = changedDemo('study.csv', (text) =>
      text.replace(/^project,[^,]*/m, 'project,a\u202eb\u009bc'),
    );
    const { stdout } = holdwright(['rank', folder, '--json']);
    expect(stdout).toContain('a\\u202eb\\u009bc');
    expect(JSON.parse(stdout).study.about.project).toBe('a\u202eb\u009bc');
  });

  it('passes through a pipe whole', () => {
    const main = new URL('../../dist/program/main.js', import.meta.url).pathname;
    const { stdout } = spawnSync(
      'sh',
      ['-c', '"$0" "$1" rank "$2" --json | cat', process.execPath, main, study],
      {
        encoding: 'utf8',
        maxBuffer: 1 << 28,
      },
    );
    expect(JSON.parse(stdout).candidates.length).toBeGreaterThan(1);
  });
});
