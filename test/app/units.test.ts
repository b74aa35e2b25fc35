import { describe, expect, it } from 'vitest';
import { assessStudy, rankingText, resultsText } from '../../src/app/study.js';
import type { Assessment } from '../../src/assess/assessment.js';
import type { Block } from '../../src/report/index.js';
import { buildReport } from '../../src/report/pages.js';
import { blocksText } from '../report/document-text.js';
import { readTemplates } from '../report/templates.js';
import { demoFiles, request } from './demo.js';

const templates = readTemplates();

/** A figure or a column in a metric unit of mass, length, torque, force, speed or temperature. */
const metric =
  /(?:\d[ \u00a0]|[|,] |^)(?:m?g|kg|[mc]?m|k?N|N·m|kg·cm|°C|K|[mc]?m\/s|N\/m?m|N·m\/rad|k?g·c?m²|c?m²|K\/W|J\/K|V·s\/m)(?![\p{L}\p{N}·/²°])/mu;

/** Where levels of sound are stated by definition, in every system of units; a name and no length that was measured. */
const soundReference = /(?:noise|sound level) at 1 m(?!\w)/gi;

/** What is told in words of the program: quotes of the files and the working in SI are left out. */
function told(block: Block): string {
  if (block.kind === 'facts') return '';
  if (block.kind === 'calculation') return block.quantity;
  if (block.kind === 'chart') return `${blocksText([block])}\n${JSON.stringify(block.specification)}`;
  if (block.kind === 'side-by-side')
    return block.columns.flatMap(({ blocks }) => blocks.map(told)).join('\n');
  if (block.kind !== 'table') return blocksText([block]);
  const isQuote = block.columns.map(({ heading }) => heading === 'As written' || heading === 'Note');
  const rows = block.rows.map((row) => ({ ...row, cells: row.cells.filter((_, index) => !isQuote[index]) }));
  return blocksText([{ ...block, rows: isQuote.includes(true) ? rows : block.rows }]);
}

function assessed(demo: string): Assessment {
  const result = assessStudy(request(demoFiles(demo)));
  if (!result.ok) throw new Error('the demo has errors');
  return result.value;
}

describe.each(['lantern-parade', 'stage-prop'])('%s in US customary units', { timeout: 120_000 }, (demo) => {
  const assessment = assessed(demo);
  const before = resultsText(assessment);
  const linesIn = (units: 'metric' | 'us') =>
    buildReport(assessment, templates, '', { units }).sections.flatMap(({ name, blocks }) =>
      blocks
        .map(told)
        .join('\n')
        .split('\n')
        .map((line) => `${name}: ${line}`),
    );
  const metricLines = (lines: string[]) =>
    lines.filter((line) => metric.test(line.slice(line.indexOf(':') + 2).replace(soundReference, 'noise')));

  it('shows no metric unit of what is mechanical or warm, in words, tables and charts', () => {
    expect(metricLines(linesIn('metric')).length).toBeGreaterThan(60);
    expect(metricLines(linesIn('us'))).toEqual([]);
  });

  it('says on the page of the working that it stays in SI', () => {
    expect(linesIn('us').join('\n')).toMatch(/The working is in SI units/);
    expect(linesIn('metric').join('\n')).not.toMatch(/The working is in SI units/);
  });

  it('ranks on the terminal with ounces, and leaves the results as they are', () => {
    const terminal = { width: 80, colour: false };
    expect(rankingText(assessment, { templates, units: 'us' }, terminal)).toMatch(/ oz /);
    expect(resultsText(assessment)).toBe(before);
  });
});
