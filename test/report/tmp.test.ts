import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { test } from 'vitest';
import { assessStudy } from '../../src/app/study.js';
import { templateTexts } from '../../src/cli/files.js';
import { renderJson } from '../../src/render/json/render-json.js';
import { loadFonts, renderPdf } from '../../src/render/pdf/index.js';
import { renderTerminal } from '../../src/render/terminal/render-terminal.js';
import { buildReport, summarise, toResults } from '../../src/report/index.js';
import { createAssessment } from './fixture.js';

test('x', { timeout: 60000 }, async () => {
  const fonts = await loadFonts();
  const T = templateTexts();
  const dir = process.env.STUDY ?? 'data-demo/lantern-parade';
  const files = readdirSync(dir).map((name) => ({
    name,
    bytes: new Uint8Array(readFileSync(`${dir}/${name}`)),
  }));
  let real: any = null;
  try {
    const r = assessStudy({ files, templates: T, changes: [], version: '0.1.0', progress: () => {} } as any);
    if (!r.ok) console.log(r.issues.slice(0, 5));
    else real = r.value;
  } catch (e) {
    console.log('assess failed', e);
  }
  for (const [n, a] of [
    ['fix', createAssessment()],
    ['real', real],
  ] as const) {
    if (!a) continue;
    writeFileSync(`/tmp/${n}.json`, JSON.stringify(a));
    const d = buildReport(a, T, '2026-01-01');
    for (const pageSize of ['A4', 'Letter'] as const) {
      const t1 = performance.now();
      const r = await renderPdf(d, { fonts, pageSize });
      console.log(n, pageSize, r.pageCount, performance.now() - t1, r.bytes.length, r.missingCharacters);
      writeFileSync(`/tmp/${n}-${pageSize}.pdf`, r.bytes);
    }
    writeFileSync(
      `/tmp/${n}.txt`,
      renderTerminal(summarise(a, T, '2026-01-01'), {
        width: 80,
        colour: false,
        written: 'demo-report/report.pdf',
      }),
    );
    writeFileSync(`/tmp/${n}-results.json`, renderJson(toResults(a)));
  }
});
