import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { viewArchive } from '../../src/app/records.js';
import { recordsData, recordsText } from '../../src/app/records-text.js';
import { jsonText } from '../../src/archive/json-text.js';
import { takeLock } from '../../src/archive/lock.js';
import { emptyFolder, filed, quickDisk } from './fixture.js';

const view = (archive: string, rebuild = false) => viewArchive(quickDisk, archive, 'now', rebuild)!;

describe('the list of records', () => {
  it('fits 80 columns, in order of date, with state, reason and what is due', () => {
    const archive = emptyFolder();
    filed(archive, { because: 'a long reason '.repeat(20), lookAgain: '2026-04-01' });
    filed(archive, { date: '2026-05-01', supersedes: '2026-03-14-adopt-worm-a', decision: 'reject' });
    const text = recordsText(view(archive).archive, 80, '2026-06-01');
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(text).toMatch(/^record +about +look again +state$/m);
    expect(text).toMatch(/^2026-03-14-adopt-worm-a +Worm A +due +superseded$/m);
    expect(text).toMatch(/^2026-05-01-reject-worm-a +Worm A +– +sound$/m);
    expect(text).toMatch(/2 records, all sound, 1 to look at again\.$/);
  });

  it('of an archive without records says so', () => {
    expect(recordsText(view(emptyFolder()).archive, 80, '2026-06-01')).toBe('There are no records yet.');
    expect(viewArchive(quickDisk, join(emptyFolder(), 'nowhere'), 'now', false)).toBeNull();
  });

  it('marks a damaged record and still lists it', () => {
    const archive = emptyFolder();
    const { folder } = filed(archive);
    writeFileSync(join(folder, 'data/decision.json'), '{');
    const { archive: state } = view(archive);
    expect(recordsText(state, 80, '2026-06-01')).toMatch(/^2026-03-14-adopt-worm-a +– +– +damaged$/m);
    expect(recordsText(state, 80, '2026-06-01')).toMatch(/1 record, 1 damaged\.$/);
  });

  it('with hostile words steers no terminal, as a table and as JSON', () => {
    const archive = emptyFolder();
    const hostile = '\u001b[2J\u001b]8;;x\u0007a\r\nb\u202ec\u0085\u009b0m';
    filed(archive, {
      because: hostile,
      by: hostile,
      lookAgain: '2026-13-01\u001b[31m',
      choice: { id: 'x', label: hostile },
    });
    const { archive: state } = view(archive);
    const printed = recordsText(state, 80, '2026-06-01') + jsonText(recordsData(state));
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
    expect(printed).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
    expect(recordsText(state, 80, '2026-06-01').split('\n').length).toBeLessThan(7);
  });
});

describe('looking at an archive', () => {
  it('changes nothing in it, but where somebody broke off or it is asked for', () => {
    const archive = emptyFolder();
    filed(archive);
    rmSync(join(archive, 'ledger.json'));
    expect(view(archive).issues.map(({ code }) => code)).toEqual(['unreadable-ledger']);
    expect(view(archive, true).issues.map(({ code }) => code)).toEqual(['ledger-rebuilt']);
    expect(view(archive).issues).toEqual([]);
  });

  it('puts in order what a process left that broke off, and says so', () => {
    const archive = emptyFolder();
    filed(archive);
    rmSync(join(archive, 'ledger.json'));
    takeLock({ ...quickDisk, writer: { ...quickDisk.writer, process: '4194999' } }, archive, 'before');
    expect(view(archive).issues.map(({ code }) => code)).toEqual(['stale-lock', 'ledger-rebuilt']);
    expect(view(archive).issues).toEqual([]);
  });

  it('removes what a process left that was killed before it held the lock', () => {
    const archive = emptyFolder();
    filed(archive);
    mkdirSync(join(archive, '.lock-4194999'));
    expect(view(archive).issues.map(({ file, code }) => `${file} ${code}`)).toEqual([
      '.lock-4194999 leftover-removed',
    ]);
    expect(view(archive).issues).toEqual([]);
  });
});
