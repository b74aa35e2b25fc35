import { describe, expect, it } from 'vitest';
import { renderJson } from '../../src/render/json/render-json.js';
import { toResults } from '../../src/report/index.js';
import { buildReport } from '../../src/report/pages.js';
import { blocksOf, blocksText, sectionOf } from './document-text.js';
import { createAssessment, createDrawnAssessment } from './fixture.js';
import { readTemplates } from './templates.js';

const assessment = createDrawnAssessment();
const results = JSON.parse(renderJson(toResults(assessment)));
const blocks = sectionOf(buildReport(assessment, readTemplates(), ''), 'answer').blocks;
const text = blocksText(blocks);

/** Every number of the results but traces and inputs, among which any number could be found; and those in its texts. */
const numbers: number[] = [];
const texts: string[] = [];
function collect(node: unknown): void {
  if (typeof node === 'number') numbers.push(node);
  else if (typeof node === 'string') texts.push(node);
  else if (node !== null && typeof node === 'object') {
    for (const [key, value] of Object.entries(node))
      if (!['series', 'runDownBands'].includes(key)) collect(value);
  }
}
collect({ ...results, study: results.study.about });
collect(results.study.targetRuntimeS);
const written = new Set(texts.join(' ').match(/\d[\d.]*\d|\d/g));

/** Units between what is stored and what is read: seconds and minutes, hours, grams, per cent. */
const factors = [1, 1 / 60, 1 / 3600, 1000, 100];

/** Whether a figure as printed is a number of the results, rounded as it is printed. */
function isInResults(printed: string): boolean {
  if (written.has(printed)) return true;
  const decimals = printed.split('.')[1]?.length ?? 0;
  return numbers.some((value) => factors.some((factor) => (value * factor).toFixed(decimals) === printed));
}

describe('a figure that hardly can be meant', () => {
  const doubt = { place: 'packs.csv:2 capacity', message: '“2200 Ah” is 2200 Ah; usual is 0.05–100 Ah' };
  const textWith = (unlikely?: (typeof doubt)[]): string => {
    const plain = createAssessment();
    const study = { ...plain.study, ...(unlikely && { unlikely }) };
    const report = buildReport({ ...plain, study }, readTemplates(), '');
    return blocksText(report.sections[0]!.blocks);
  };

  it('is named on page one', () => {
    expect(textWith([doubt])).toContain(
      '1 figure looks unlikely: packs.csv:2 capacity: “2200 Ah” is 2200 Ah; usual is 0.05–100 Ah.',
    );
    expect(textWith([doubt, doubt, doubt, doubt])).toMatch(/4 figures look unlikely: .*; 2 more, which/);
    expect(textWith()).not.toContain('unlikely');
  });
});

describe('the first page of a report with draws', () => {
  it('carries no figure that is not in results.json', () => {
    const rows = blocksOf(blocks, 'table')[0]!.rows.flatMap((row) =>
      row.cells.map((cell) => cell.text.map((span) => span.text).join('')),
    );
    const charts = blocksOf(blocks, 'chart').map((chart) => chart.alternative);
    const paragraphs = blocksOf(blocks, 'paragraph').map((block) =>
      block.text.map(({ text: t }) => t).join(''),
    );
    const printed = [...rows, ...charts, ...paragraphs]
      .join(' ')
      .replace(/(?<=\d),(?=\d{3})/g, '')
      .match(/\d+(?:\.\d+)?/g)!;
    expect(printed.length).toBeGreaterThan(80);
    // Two per cent figures are made on the page: the share of figures given, and the 80 % and 10–90 % of its words.
    const made = ['66', '80', '10', '90', '14', '2026', '5'];
    expect([...new Set(printed)].filter((figure) => !made.includes(figure) && !isInResults(figure))).toEqual(
      [],
    );
  });

  it('answers with the verdict, how sure it is, and what would overturn it', () => {
    const { verdict } = assessment;
    expect(text).toContain(verdict.sentence);
    expect(text).toContain('How sure? Likely: the worm beats the servo of today in 84 %');
    expect(text).toContain(verdict.overturnedBy[0]);
  });

  it('ranks with median and 10–90 %, packs for the day, and the share of draws in which each leads', () => {
    expect(text).toContain(
      'Runtime min | Packs a day | On body g | Holding W | Cost EUR | Work h | Score  | Leads %',
    );
    expect(text).toContain('| ✓ passes 5 limits | 173 (127–191) | 1 | 661 | 0 | 45 | 14 | 0.81 | 62');
    expect(text).toContain('| 54 (40–60) | 2 | 384 | 3.91 (2.88–4.33) | 0 | 0 | 0.47 | 20');
  });

  it('marks who passes on paper only, with the share of draws', () => {
    expect(text).toContain('passes on paper, 61 % of draws (');
  });

  it('says how well the next figure has to be measured', () => {
    expect(text).toContain('Multimeter, 10 min, ±8 %.');
  });
});
