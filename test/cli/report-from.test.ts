import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { changedDemo, demo, emptyFolder, holdwright, namesIn } from './program.js';

describe('a report out of a report', { timeout: 120_000 }, () => {
  const [first, second] = [join(emptyFolder(), 'first'), join(emptyFolder(), 'second')];
  let made: ReturnType<typeof holdwright>;
  let again: ReturnType<typeof holdwright>;
  beforeAll(() => {
    const study = changedDemo('candidates.csv', (text) =>
      text.replace('Servo as built', 'Servo 🦢 as built'),
    );
    const withoutDate = readFileSync(join(study, 'study.csv'), 'utf8').replace(/^date,.*$/m, '');
    writeFileSync(join(study, 'study.csv'), withoutDate);
    const env = { SOURCE_DATE_EPOCH: '86400' };
    made = holdwright(['report', study, '--out', first, '--page', 'letter'], { env });
    rmSync(study, { recursive: true });
    again = holdwright(['report', '--from', join(first, 'report.pdf'), '--out', second]);
  }, 240_000);

  it('is the same, byte for byte, with the study gone: paper and date come out of the PDF too', () => {
    expect([made.code, again.code]).toEqual([0, 0]);
    expect(namesIn(second)).toEqual(['report.pdf', 'results.json']);
    for (const name of namesIn(second))
      expect(readFileSync(join(second, name)).equals(readFileSync(join(first, name))), name).toBe(true);
  });

  it('says that the results agree', () => {
    expect(again.stdout).toContain('Results agree: every figure is the same.');
    expect(again.stdout).toContain('Made by the same program for 1970-01-02.');
  });

  it('names file and line of a sign that no font has', () => {
    const line = readFileSync(join(demo, 'candidates.csv'), 'utf8')
      .split('Servo as built')[0]!
      .split('\n').length;
    for (const { stderr } of [made, again])
      expect(stderr).toContain(`warning: candidates.csv:${line}: no font has 🦢, it is shown as □`);
  });

  it.each([
    ['a file that is no PDF', (): Uint8Array => readFileSync(join(demo, 'study.csv'))],
    ['a PDF that breaks off', () => readFileSync(join(first, 'report.pdf')).subarray(0, 400_000)],
    [
      'a PDF that carries nothing',
      () =>
        Buffer.from(
          '%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Type /Pages /Kids [] /Count 0 >>\nendobj\ntrailer\n<< /Root 1 0 R /Size 3 >>\n%%EOF\n',
        ),
    ],
  ])('from %s ends with 3 and writes nothing', (_, bytes) => {
    const [pdf, out] = [join(emptyFolder(), 'x.pdf'), join(emptyFolder(), 'out')];
    writeFileSync(pdf, bytes());
    const { code, stdout, stderr } = holdwright(['report', '--from', pdf, '--out', out]);
    expect([code, stdout, namesIn(out)]).toEqual([3, '', []]);
    expect(stderr).toContain('expected: a report.pdf as holdwright wrote it');
  });

  it('from a path where nothing is ends with 3', () => {
    const nowhere = join(emptyFolder(), 'no.pdf');
    const { code, stderr } = holdwright(['report', '--from', nowhere, '--out', emptyFolder()]);
    expect([code, stderr.includes('cannot be read')]).toEqual([3, true]);
  });

  it.each([[[demo, '--from', 'report.pdf']], [[]]])('wants a study or a report, not %j', (words) => {
    const out = join(emptyFolder(), 'out');
    const { code, stderr } = holdwright(['report', ...words, '--out', out]);
    expect([code, namesIn(out)]).toEqual([2, []]);
    expect(stderr).toContain('name either a study folder or, with --from, a report.pdf');
  });
});
