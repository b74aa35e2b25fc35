import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readArchive } from '../../src/archive/read-archive.js';
import { rebuildLedger } from '../../src/archive/rebuild.js';
import { emptyFolder, filed, quickDisk, textsBelow } from './fixture.js';

/** A record to damage; what is wrong with it afterwards, as `file code`. */
class Victim {
  readonly archive = emptyFolder();
  readonly id = filed(this.archive).record.id;

  at(path: string): string {
    return join(this.archive, this.id, path);
  }

  edit(path: string, change: (text: string) => string): void {
    const before = readFileSync(this.at(path), 'utf8');
    const after = change(before);
    if (after === before) throw new Error(`the change leaves ${path} as it was`);
    writeFileSync(this.at(path), after);
  }

  /** Makes the manifests agree with the files again, as somebody would who knows how. */
  reseal(): void {
    const hash = (path: string) =>
      createHash('sha256')
        .update(readFileSync(this.at(path)))
        .digest('hex');
    const names = Object.keys(textsBelow(this.at('data'))).map((name) => `data/${name}`);
    writeFileSync(
      this.at('manifest-sha256.txt'),
      names
        .sort()
        .map((name) => `${hash(name)}  ${name}\n`)
        .join(''),
    );
    this.resealTags();
  }

  resealTags(): void {
    const hash = (path: string) =>
      createHash('sha256')
        .update(readFileSync(this.at(path)))
        .digest('hex');
    const tags = ['bag-info.txt', 'bagit.txt', 'manifest-sha256.txt'];
    writeFileSync(this.at('tagmanifest-sha256.txt'), tags.map((name) => `${hash(name)}  ${name}\n`).join(''));
  }

  wrong(): string[] {
    const issues = readArchive(quickDisk, this.archive)!.issues;
    return issues.map(({ file, code }) => `${file.replace(`${this.id}/`, '')} ${code}`);
  }
}

const kinds: [kind: string, damage: (victim: Victim) => void, told: string[]][] = [
  [
    'a changed file',
    (victim) => victim.edit('data/inputs/study.csv', (text) => text.replace('860', '760')),
    ['data/inputs/study.csv changed-file'],
  ],
  [
    'a removed file',
    (victim) => rmSync(victim.at('data/results.json')),
    ['bag-info.txt wrong-count', 'data/results.json missing-from-record'],
  ],
  [
    'an added file',
    (victim) => writeFileSync(victim.at('data/inputs/day.csv'), 'block\n'),
    ['bag-info.txt wrong-count', 'data/inputs/day.csv not-in-record'],
  ],
  [
    'an added file beside the payload',
    (victim) => writeFileSync(victim.at('read-me.txt'), 'trust me'),
    ['read-me.txt not-in-record'],
  ],
  [
    'a renamed file',
    (victim) => renameSync(victim.at('data/inputs/show.csv'), victim.at('data/inputs/show-old.csv')),
    ['data/inputs/show-old.csv renamed-file', 'data/inputs/show.csv missing-from-record'],
  ],
  [
    'an edited manifest',
    (victim) => victim.edit('manifest-sha256.txt', (text) => text.replace(/^[0-9a-f]{8}/, '00000000')),
    ['data/decision.json changed-file', 'manifest-sha256.txt changed-file'],
  ],
  [
    'a manifest with a line that is none',
    (victim) => {
      appendFileSync(victim.at('manifest-sha256.txt'), 'and this one is fine too\n');
      victim.resealTags();
    },
    ['manifest-sha256.txt malformed-line'],
  ],
  [
    'a truncated PDF',
    (victim) => truncateSync(victim.at('data/report.pdf'), 700),
    ['bag-info.txt wrong-count', 'data/report.pdf cut-short'],
  ],
  [
    'two files that changed places',
    (victim) => {
      renameSync(victim.at('data/inputs/show.csv'), victim.at('data/aside'));
      renameSync(victim.at('data/inputs/study.csv'), victim.at('data/inputs/show.csv'));
      renameSync(victim.at('data/aside'), victim.at('data/inputs/study.csv'));
    },
    ['data/inputs/show.csv swapped-file', 'data/inputs/study.csv swapped-file'],
  ],
  [
    'an input exchanged for another, manifests and all',
    (victim) => {
      victim.edit('data/inputs/study.csv', (text) => text.replace('860', '999'));
      victim.reseal();
    },
    ['data/inputs/study.csv changed-file'],
  ],
  [
    'a path with .. in the manifest',
    (victim) => {
      appendFileSync(victim.at('manifest-sha256.txt'), `${'0'.repeat(64)}  data/../../ledger.json\n`);
      victim.resealTags();
    },
    ['manifest-sha256.txt unsafe-path'],
  ],
  [
    'an absolute path in the manifest',
    (victim) => {
      appendFileSync(victim.at('manifest-sha256.txt'), `${'0'.repeat(64)}  /etc/hostname\n`);
      victim.resealTags();
    },
    ['manifest-sha256.txt unsafe-path'],
  ],
  [
    'a path of another system in the manifest',
    (victim) => {
      appendFileSync(victim.at('manifest-sha256.txt'), `${'0'.repeat(64)}  C:\\data\\study.csv\n`);
      victim.resealTags();
    },
    ['manifest-sha256.txt unsafe-path'],
  ],
  [
    'a path in disguise in the manifest',
    (victim) => {
      appendFileSync(victim.at('manifest-sha256.txt'), `${'0'.repeat(64)}  data/x%0Ay\n`);
      victim.resealTags();
    },
    ['manifest-sha256.txt unsafe-path'],
  ],
  [
    'a link in place of a file, to the very same bytes',
    (victim) => {
      const elsewhere = join(mkdtempSync(join(tmpdir(), 'holdwright-')), 'study.csv');
      renameSync(victim.at('data/inputs/study.csv'), elsewhere);
      symlinkSync(elsewhere, victim.at('data/inputs/study.csv'));
    },
    [
      'bag-info.txt wrong-count',
      'data/inputs/study.csv link-in-record',
      'data/inputs/study.csv missing-from-record',
    ],
  ],
  [
    'a link in place of a folder',
    (victim) => {
      const elsewhere = join(mkdtempSync(join(tmpdir(), 'holdwright-')), 'inputs');
      renameSync(victim.at('data/inputs'), elsewhere);
      symlinkSync(elsewhere, victim.at('data/inputs'));
    },
    [
      'bag-info.txt wrong-count',
      'data/inputs link-in-record',
      'data/inputs/show.csv missing-from-record',
      'data/inputs/study.csv missing-from-record',
    ],
  ],
  [
    'a case twin',
    (victim) => writeFileSync(victim.at('data/inputs/Study.csv'), 'item,value\n'),
    ['bag-info.txt wrong-count', 'data/inputs/Study.csv case-twin', 'data/inputs/Study.csv not-in-record'],
  ],
  [
    'a case twin in the manifest',
    (victim) => {
      appendFileSync(victim.at('manifest-sha256.txt'), `${'0'.repeat(64)}  data/Report.PDF\n`);
      victim.resealTags();
    },
    ['manifest-sha256.txt case-twin'],
  ],
  [
    'a wrong count',
    (victim) => {
      victim.edit('bag-info.txt', (text) => text.replace(/Oxum: \d+/, 'Oxum: 7'));
      victim.resealTags();
    },
    ['bag-info.txt wrong-count'],
  ],
  [
    'a name with a line feed in it',
    (victim) => writeFileSync(victim.at('data/a\nb'), ''),
    ['bag-info.txt wrong-count', 'data/a\nb not-in-record', 'data/a\nb strange-name'],
  ],
  ['an empty folder', (victim) => mkdirSync(victim.at('data/empty')), ['data/empty not-a-file']],
  [
    'a pipe in place of a file',
    (victim) => {
      rmSync(victim.at('data/results.json'));
      execFileSync('mkfifo', [victim.at('data/results.json')]);
    },
    ['bag-info.txt wrong-count', 'data/results.json missing-from-record', 'data/results.json not-a-file'],
  ],
  [
    'another declaration',
    (victim) => {
      victim.edit('bagit.txt', (text) => text.replace('1.0', '9.9'));
      victim.resealTags();
    },
    ['bagit.txt not-a-bag'],
  ],
  [
    'a decision that is none',
    (victim) => {
      victim.edit('data/decision.json', (text) => text.replace('"adopt"', '"adore"'));
      victim.reseal();
    },
    ['data/decision.json unreadable-decision'],
  ],
  [
    'a decision turned round, manifests and all: only the ledger knows',
    (victim) => {
      victim.edit('data/decision.json', (text) => text.replace('"decision": "adopt"', '"decision": "keep"'));
      victim.edit('bag-info.txt', (text) =>
        text.replace(/Oxum: \d+/, `Oxum: ${Number(/Oxum: (\d+)/.exec(text)![1]) - 1}`),
      );
      victim.reseal();
    },
    ['tagmanifest-sha256.txt rewritten-record'],
  ],
  [
    'a manifest that is gone',
    (victim) => rmSync(victim.at('manifest-sha256.txt')),
    ['manifest-sha256.txt missing-from-record'],
  ],
  [
    'information that is gone',
    (victim) => rmSync(victim.at('bag-info.txt')),
    ['bag-info.txt missing-from-record'],
  ],
];

describe('tampering is told, file by file', () => {
  it.each(kinds)('%s', (_, damage, told) => {
    const victim = new Victim();
    expect(victim.wrong()).toEqual([]);
    damage(victim);
    const wrong = victim.wrong();
    expect(wrong.sort()).toEqual(told);
  });

  it('the folder of a record under another name', () => {
    const victim = new Victim();
    renameSync(victim.at('.'), join(victim.archive, 'another-name'));
    const issues = readArchive(quickDisk, victim.archive)!.issues;
    expect(issues.map(({ file, code }) => `${file} ${code}`)).toEqual([
      'another-name/bag-info.txt renamed-record',
      'another-name/data/decision.json unreadable-decision',
      'another-name unlisted-record',
      `${victim.id} missing-record`,
    ]);
  });

  it('a link in place of the whole record', () => {
    const victim = new Victim();
    const elsewhere = join(emptyFolder(), 'record');
    renameSync(victim.at('.'), elsewhere);
    symlinkSync(elsewhere, dirname(victim.at('x')));
    expect(victim.wrong().map((line) => line.split(' ')[1])).toEqual(['link-in-record', 'missing-record']);
  });

  it('nothing outside the record is read, whatever a manifest or link points at', () => {
    const victim = new Victim();
    const read: string[] = [];
    appendFileSync(victim.at('manifest-sha256.txt'), `${'0'.repeat(64)}  data/../../../secret\n`);
    symlinkSync('/etc/hostname', victim.at('data/hostname'));
    const watched = {
      ...quickDisk,
      read(path: string) {
        read.push(path);
        return quickDisk.read(path);
      },
    };
    readArchive(watched, victim.archive);
    expect(read.filter((path) => !path.startsWith(victim.archive))).toEqual([]);
    expect(read.filter((path) => path.includes('hostname') || path.includes('secret'))).toEqual([]);
  });

  it('a link is not read even when it is put there between looking and reading', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'file'), 'x');
    symlinkSync(join(folder, 'file'), join(folder, 'link'));
    expect(() => quickDisk.read(join(folder, 'link'))).toThrow();
  });

  it('the checksum tool of the system agrees about sound and changed', () => {
    const victim = new Victim();
    const check = () =>
      spawnSync('sha256sum', ['-c', 'manifest-sha256.txt'], { cwd: victim.at('.'), encoding: 'utf8' });
    expect(check().status).toBe(0);
    expect(check().stdout).not.toMatch(/FAILED/);
    victim.edit('data/report.pdf', (text) => `${text}x`);
    expect(check().stdout).toMatch(/data\/report\.pdf: FAILED/);
  });
});

describe('a ledger made anew after tampering', () => {
  it('keeps the line of a damaged record, so that the damage stays known', () => {
    const victim = new Victim();
    const before = readFileSync(join(victim.archive, 'ledger.json'), 'utf8');
    victim.edit('data/inputs/study.csv', (text) => `${text}x`);
    victim.reseal();
    const told = victim.wrong();
    rebuildLedger(quickDisk, victim.archive, 'now');
    expect(readFileSync(join(victim.archive, 'ledger.json'), 'utf8')).toBe(before);
    expect(victim.wrong()).toEqual(told);
  });

  it('leaves a damaged record out when there was no ledger, and says so', () => {
    const victim = new Victim();
    rmSync(join(victim.archive, 'ledger.json'));
    victim.edit('data/inputs/study.csv', (text) => `${text}x`);
    const { issues } = rebuildLedger(quickDisk, victim.archive, 'now');
    expect(issues.map(({ code }) => code)).toEqual(['ledger-rebuilt', 'left-out-of-ledger']);
    expect(victim.wrong()).toContain('data/inputs/study.csv changed-file');
  });
});
