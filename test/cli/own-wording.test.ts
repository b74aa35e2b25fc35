import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { emptyFolder, holdwright, namesIn } from './program.js';

/** A small study, so that each run is short. */
let study: string;
beforeAll(() => {
  study = join(emptyFolder(), 'study');
  expect(holdwright(['new', study, '--drive', 'position-servo']).code).toBe(0);
});

/** A folder with some templates of one's own. */
function wordingOf(files: Record<string, string>): string {
  const folder = emptyFolder();
  for (const name of ['report', 'charts']) mkdirSync(join(folder, name));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

describe('wording of one\u2019s own', { timeout: 120_000 }, () => {
  it('starts from a copy that changes nothing, and never writes over one', () => {
    const folder = join(emptyFolder(), 'wording');
    expect(holdwright(['new', folder, '--wording']).stdout).toContain('report/answer.md');
    expect(holdwright(['new', folder, '--wording'])).toMatchObject({ code: 4, stdout: '' });
    const [plain, own] = [emptyFolder(), emptyFolder()];
    const env = { SOURCE_DATE_EPOCH: '1700000000' };
    expect(holdwright(['report', study, '--out', plain], { env }).code).toBe(0);
    const ended = holdwright(['report', study, '--out', own, '--templates', folder], { env });
    expect([ended.code, ended.stderr.includes('template')]).toEqual([0, false]);
    expect(readFileSync(join(own, 'report.pdf'))).toEqual(readFileSync(join(plain, 'report.pdf')));
  });

  it('may be a few files; what is not there is taken as it ships, short texts one by one', () => {
    const folder = wordingOf({
      'report/phrases.md': '## figures-line\n\n{{given}} known, {{assumed}} guessed\n',
    });
    const { code, stdout } = holdwright(['rank', study, '--templates', folder]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/known,\s+\d+\s+guessed/);
  });

  it('ends with 3, every fault with file and line, and nothing written', () => {
    const folder = wordingOf({
      'report/answer.md': '# {{qestion}}\n\n{{ranking}}\n\n{{raesons}}\n',
      'report/contents.md': '- answer\n- wyh\n',
      'report/heat.md': '::: when has_show\n',
      'charts/theme.json': '{ "font": }',
      'charts/swings.json': '{\n "data": { "url": "https://example.org/rows.csv" } }',
      'report/anser.md': 'x',
    });
    const out = join(emptyFolder(), 'report');
    const { code, stdout, stderr } = holdwright(['report', study, '--out', out, '--templates', folder]);
    expect([code, stdout, namesIn(out)]).toEqual([3, '', []]);
    for (const told of [
      `${folder}/report/answer.md:1: nothing is called {{qestion}}; did you mean {{question}}?`,
      `${folder}/report/answer.md:5: nothing is called {{raesons}}; did you mean {{reasons}}?`,
      `${folder}/report/contents.md:2: there is no section wyh; did you mean why?`,
      `${folder}/report/heat.md:1: this ::: is never closed`,
      `${folder}/charts/theme.json:1: not readable as JSON`,
      `${folder}/charts/swings.json:2: "url" is not allowed here`,
      `warning: ${folder}/report/anser.md`,
      'did you mean report/answer.md?',
      '6 errors, 1 warning',
    ]) {
      expect(stderr).toContain(told);
    }
  });

  it('leads nowhere outside its folder', () => {
    const folder = wordingOf({});
    symlinkSync(join(study, 'study.csv'), join(folder, 'report/why.md'));
    rmSync(join(folder, 'charts'), { recursive: true });
    symlinkSync(study, join(folder, 'charts'));
    const { code, stderr } = holdwright(['check', study, '--templates', folder]);
    expect(code).toBe(3);
    expect(stderr).toContain(`${folder}/report/why.md: this is a link`);
    expect(stderr).toContain(`${folder}/charts: this is a link`);
    expect(holdwright(['rank', study, '--templates', join(folder, 'nowhere')])).toMatchObject({ code: 3 });
  });

  it('runs no code: charts are drawn where nothing can be made into code', () => {
    const out = emptyFolder();
    const env = { NODE_OPTIONS: '--disallow-code-generation-from-strings' };
    expect(holdwright(['report', study, '--out', out], { env }).code).toBe(0);
  });
});
