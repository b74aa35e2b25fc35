import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { emptyFolder, holdwright, namesIn } from '../cli/program.js';
import { poisoned } from './poisoned.js';
import { hostileTexts, mark, steering } from './texts.js';

/** Everything at once that a command line can carry; a zero character it cannot. */
const worst = Object.values(hostileTexts).join(' ');
const study = emptyFolder();
const archive = join(emptyFolder(), 'records');
const record = '2026-03-14-postpone-worm-driver';
const env = { SOURCE_DATE_EPOCH: '1773489600' };

describe('hostile words of a decision', { timeout: 120_000 }, () => {
  beforeAll(() => {
    for (const { name, bytes } of poisoned(hostileTexts['terminal colours']!))
      writeFileSync(join(study, name), bytes);
    const words = [
      '--because',
      worst,
      '--by',
      hostileTexts['a right-to-left override']!,
      '--archive',
      archive,
    ];
    const args = ['decide', study, '--choose', 'worm-driver', '--decision', 'postpone', ...words];
    const { code, stdout, stderr } = holdwright(args, { env });
    expect(code).toBe(0);
    expect(stdout + stderr).not.toMatch(steering);
  }, 120_000);

  it('are kept in the record to the letter, in a file that steers nothing', () => {
    const text = readFileSync(join(archive, record, 'data', 'decision.json'), 'utf8');
    expect(text).not.toMatch(steering);
    expect(JSON.parse(text)).toMatchObject({ because: worst, choice: { id: 'worm-driver' } });
  });

  it('stay on one line of what vouches for the record', () => {
    const text = readFileSync(join(archive, record, 'bag-info.txt'), 'utf8');
    expect(text).not.toMatch(steering);
    expect(text).toContain(mark);
    for (const line of text.trimEnd().split('\n')) expect(line).toMatch(/^[A-Z][A-Za-z-]+: \S/);
    expect(namesIn(join(archive, record, 'data', 'inputs')).every((name) => /^[\w.-]+$/.test(name))).toBe(
      true,
    );
  });

  it.each([
    ['records', [archive]],
    ['records', [archive, '--json']],
    ['reopen', [join(archive, record)]],
    ['reopen', [join(archive, record), '--json']],
    ['explain', [study, 'worm-driver']],
    ['explain', [study, 'worm-driver', '--json']],
  ])('steer nothing in %s %j', (command, args) => {
    const { code, stdout, stderr } = holdwright([command, ...args], { env });
    expect(code).toBe(0);
    expect(stdout + stderr).not.toMatch(steering);
    expect(stdout).toContain(mark);
  });
});
