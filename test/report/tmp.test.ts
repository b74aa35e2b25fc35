import { test } from 'vitest';
import { createAssessment } from './fixture.js';
import { readTemplates } from './templates.js';
import { buildReport } from '../../src/report/index.js';
import { loadFonts, renderPdf } from '../../src/render/pdf/index.js';
import { writeFileSync } from 'node:fs';
test('x', async () => {
  const fonts = await loadFonts();
  for (const pageSize of ['A4', 'Letter'] as const) {
    const t0 = performance.now();
    const d = buildReport(createAssessment(), readTemplates(), '2026-01-01');
    const t1 = performance.now();
    const r = await renderPdf(d, { fonts, pageSize });
    console.log(pageSize, r.pageCount, t1 - t0, performance.now() - t1, r.bytes.length, r.missingCharacters);
    writeFileSync(`/tmp/fix-${pageSize}.pdf`, r.bytes);
  }
});
