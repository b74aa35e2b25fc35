import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/app/decide.js';
import type { DecisionWords } from '../../src/app/decide-checks.js';
import { decidedData, decidedText } from '../../src/app/decide-text.js';
import { bytesOf, textOf } from '../../src/archive/digest.js';
import { jsonText } from '../../src/archive/json-text.js';
import { readArchive } from '../../src/archive/read-archive.js';
import { readDecision } from '../../src/archive/record.js';
import { faulty } from './faulty.js';
import { emptyFolder, quickDisk } from './fixture.js';
import { assumptionsTable, decided, decideRequest, smallStudy, tools } from './small-study.js';

const study = smallStudy();

async function told(archive: string, words: Partial<DecisionWords>): Promise<string[]> {
  const { issues } = await decide(decideRequest(archive, study, words), quickDisk, tools);
  return issues.map(({ file, code }) => `${file} ${code}`);
}

describe('a decision', () => {
  it('is filed with inputs, results and report, and reads as it was said', async () => {
    const folder = await decided(decideRequest(emptyFolder(), study, { lookAgain: '1.9.2026' }));
    const decision = readDecision(readFileSync(join(folder, 'data/decision.json'), 'utf8'))!;
    expect(decision).toMatchObject({
      decision: 'adopt',
      choice: { id: 'worm-driver', label: 'Worm, position driver' },
      by: 'two makers at a kitchen table',
      lookAgain: '2026-09-01',
      baseline: 'servo-now',
      version: '0.1.0',
    });
    for (const { name, file } of decision.inputs) {
      const kept = readFileSync(join(folder, 'data', file));
      expect(kept.equals(study.find((input) => input.name === name)!.bytes), name).toBe(true);
    }
    expect(existsSync(join(folder, 'data/report.pdf'))).toBe(true);
    expect(JSON.parse(readFileSync(join(folder, 'data/results.json'), 'utf8')).inputHash).toBe(
      decision.inputHash,
    );
  });

  it('keeps the table of assumptions it was made with', async () => {
    const request = decideRequest(emptyFolder(), study);
    const table = assumptionsTable();
    const folder = await decided({ ...request, templates: { 'assumptions.csv': table } });
    expect(readFileSync(join(folder, 'data/assumptions.csv'), 'utf8')).toBe(table);
  });

  it('keeps files with line ends of Windows and names of Windows paths byte for byte', async () => {
    const crlf = study.map(({ name, bytes }) => ({
      name,
      bytes: bytesOf(textOf(bytes).replaceAll('\n', '\r\n')),
    }));
    const candidates = crlf.find(({ name }) => name === 'candidates.csv')!;
    const more = { name: 'candidates-C:\\Größe\\worms.csv', bytes: candidates.bytes };
    const only = crlf.filter((file) => file !== candidates);
    const archive = emptyFolder();
    const folder = await decided(decideRequest(archive, [...only, more]));
    const decision = readDecision(readFileSync(join(folder, 'data/decision.json'), 'utf8'))!;
    const input = decision.inputs.find(({ name }) => name === more.name)!;
    expect(input.file).toBe('inputs/worms.csv');
    expect(readFileSync(join(folder, 'data', input.file)).equals(more.bytes)).toBe(true);
    expect(readFileSync(join(folder, 'manifest-sha256.txt'), 'utf8')).not.toMatch(/[^\x20-\x7e\n]/);
    expect(readArchive(quickDisk, archive)!.issues).toEqual([]);
  });

  it('names everything that is wrong with it in one run, and files nothing', async () => {
    const archive = join(emptyFolder(), 'records');
    const words = { choose: 'worm-drive', because: '  ', date: '3/4/26', lookAgain: 'soon', supersedes: 'x' };
    expect(await told(archive, words)).toEqual([
      '--choose unknown-candidate',
      '--because no-reason',
      '--date not-a-date',
      '--look-again not-a-date',
      '--supersedes unknown-record',
    ]);
    expect(existsSync(archive)).toBe(false);
    const { issues } = await decide(decideRequest(archive, study, words), quickDisk, tools);
    expect(issues[0]!.hint).toBe('did you mean worm-driver?');
  });

  it.each([
    [{ lookAgain: '2026-03-14' }, '--look-again look-again-too-early'],
    [{ because: 'x'.repeat(10_001) }, '--because text-too-long'],
    [{ by: 'x'.repeat(201) }, '--by text-too-long'],
    [{ decision: 'keep' }, '--decision keeps-what-is-not-built'],
    [{ choose: 'servo-now' }, '--decision another-word-meant'],
  ] as const)('%j is told: %s', async (words, issue) => {
    expect(await told(emptyFolder(), words)).toContain(issue);
  });

  it('to adopt what fails a limit is filed with a warning', async () => {
    const failing = smallStudy({ 'criteria.csv': (text) => `${text.trimEnd()}\nnoise,0,,,at most 1 dB,\n` });
    const result = await decide(decideRequest(emptyFolder(), failing), quickDisk, tools);
    expect(result.ok && result.value.filed !== null).toBe(true);
    expect(result.issues.map(({ code, severity }) => [code, severity])).toContainEqual([
      'adopts-what-fails',
      'warning',
    ]);
  });

  it('to keep what is not built is refused', async () => {
    const archive = join(emptyFolder(), 'records');
    const result = await decide(decideRequest(archive, study, { decision: 'keep' }), quickDisk, tools);
    expect(result.ok && result.value.filed).toBeNull();
    expect(existsSync(archive)).toBe(false);
  });

  it('beside one that still stands for the same question is told to supersede it', async () => {
    const archive = emptyFolder();
    await decided(decideRequest(archive, study));
    const before = '2026-03-14-adopt-worm-driver';
    const beside = await decide(decideRequest(archive, study, { date: '2026-04-01' }), quickDisk, tools);
    expect(beside.issues.find(({ code }) => code === 'stands-beside')!.hint).toContain(before);
    const replacing = { date: '2026-04-02', supersedes: before };
    expect(await told(archive, replacing)).toEqual(['--supersedes stands-beside']);
    expect(await told(emptyFolder(), {})).toEqual([]);
  });

  it('supersedes an earlier one, and tells when that has happened before', async () => {
    const archive = emptyFolder();
    await decided(decideRequest(archive, study));
    const supersedes = '2026-03-14-adopt-worm-driver';
    expect(await told(archive, { supersedes, date: '2026-04-01', decision: 'reject' })).toEqual([]);
    expect(await told(archive, { supersedes, date: '2026-03-01', decision: 'postpone' })).toEqual([
      '--supersedes superseded-already',
      '--supersedes supersedes-later',
    ]);
  });

  it('about a study with errors is not begun', async () => {
    const result = await decide(decideRequest(emptyFolder(), []), quickDisk, tools);
    expect(result.ok).toBe(false);
  });

  it('that cannot be written says so', async () => {
    const archive = join(await decided(decideRequest(emptyFolder(), study)), 'bagit.txt');
    const result = await decide(decideRequest(archive, study), quickDisk, tools);
    expect(result.ok && result.value).toEqual({ filed: null, why: 'write' });
  });
});

describe('every rename of a decision', () => {
  it.each([1, 2, 3, 4])('refused at number %i leaves it filed, or nothing', async (number) => {
    const archive = emptyFolder();
    const { files, done } = faulty(quickDisk, null);
    await decide(decideRequest(emptyFolder(), study), files, tools);
    const renames = done.flatMap(({ step }, index) => (step === 'rename' ? [index + 1] : []));
    expect(renames.length).toBe(4);
    const fault = { at: renames[number - 1]!, how: 'refused', last: false } as const;
    const result = await decide(decideRequest(archive, study), faulty(quickDisk, fault).files, tools);
    const isFiled = result.ok && result.value.filed !== null;
    // The last gives the lock back: the record is filed by then, and the lock is told.
    expect(isFiled).toBe(number === 4);
    if (!isFiled) expect(result.ok && result.value).toEqual({ filed: null, why: 'write' });
    const state = readArchive(quickDisk, archive)!;
    expect([state.issues, state.records.length]).toEqual([[], isFiled ? 1 : 0]);
  });
});

describe('hostile words', () => {
  const because =
    'ok\u001b]0;gone\u0007\u001b[2J\n<script>alert(1)</script>\r\n=cmd|%0A\u202egnp\u2066 \u009b31m';
  const by = '\u001b[31mmaker\u0000\n%s';

  it('are kept word for word and steer nothing: not the terminal, not the ledger, not the bag', async () => {
    const archive = emptyFolder();
    const result = await decide(decideRequest(archive, study, { because, by }), quickDisk, tools);
    if (!result.ok || result.value.filed === null) throw new Error('not filed');
    const { filed } = result.value;
    expect(readArchive(quickDisk, archive)!.issues).toEqual([]);
    expect(readDecision(readFileSync(join(filed.folder, 'data/decision.json'), 'utf8'))).toMatchObject({
      because,
      by,
    });
    const printed = [
      decidedText(filed, 80),
      jsonText(decidedData(filed)),
      readFileSync(join(archive, 'ledger.json'), 'utf8'),
      readFileSync(join(filed.folder, 'data/decision.json'), 'utf8'),
      readFileSync(join(filed.folder, 'bag-info.txt'), 'utf8'),
    ];
    for (const text of printed) {
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
      expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
    }
  });
});
