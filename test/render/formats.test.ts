import { describe, expect, it } from 'vitest';
import { formats } from '../../src/render/index.js';
import { summarise, toResults } from '../../src/report/index.js';
import { buildReport } from '../../src/report/pages.js';
import { createAssessment } from '../report/fixture.js';
import { readTemplates } from '../report/templates.js';

describe('the formats of a report', () => {
  const assessment = createAssessment();
  const templates = readTemplates();
  const renderable = {
    document: buildReport(assessment, templates, '2026-01-01'),
    summary: () => summarise(assessment, templates, '2026-01-01'),
    results: toResults(assessment),
  };
  const settings = { pageSize: 'Letter' as const, width: 80, colour: false };

  it.each(['pdf', 'html', 'json', 'terminal'] as const)('fill %s', async (name) => {
    const { bytes } = await formats[name].render(renderable, settings);
    const start = Buffer.from(bytes.subarray(0, 8)).toString('latin1');
    expect(
      start.startsWith({ pdf: '%PDF-1.7', html: '<!doctyp', json: '{', terminal: 'Lantern' }[name]),
    ).toBe(true);
  });

  it('report signs that no font has', async () => {
    const { missingCharacters } = await formats.pdf.render(renderable, settings);
    expect(missingCharacters.map(({ character }) => character)).toEqual(['🦢']);
  });
});
