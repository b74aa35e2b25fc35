import { describe, expect, it } from 'vitest';
import { buildReport } from '../../src/report/pages.js';
import { blocksOf, blocksText, sectionOf } from './document-text.js';
import { createAssessment, createCandidates } from './fixture.js';
import { readTemplates } from './templates.js';

const glowing = createCandidates().map((one) =>
  one.id === 'servo-now'
    ? {
        ...one,
        nominal: { ...one.nominal, windingTemperatureK: 871, caseTemperatureK: 758 },
        series: {
          ...one.series,
          heatInShow: {
            timesS: [0, 60, 120, 180, 3600],
            windingTemperaturesK: [293, 340, 380, 420, 871],
            caseTemperaturesK: [293, 300, 310, 320, 758],
          },
        },
      }
    : one,
);
const report = buildReport(createAssessment({ candidates: glowing }), readTemplates(), '');
const heat = sectionOf(report, 'heat').blocks;

describe('a drive that would burn out', () => {
  it('has no temperature past its winding limit, nor of a case that no drive survives', () => {
    const text = blocksText(heat);
    expect(text).toContain('Servo as built (35 kg·cm, 7.4 V) | >100 | >150');
    expect(text).not.toMatch(/598|485/);
    const page = report.sections.find(({ title }) => title.includes('Servo as built'))!;
    expect(blocksText(page.blocks)).not.toMatch(/598|485/);
  });

  it('is drawn up to the moment in which its winding passes the limit', () => {
    const chart = blocksOf(heat, 'chart').find(({ name }) => name === 'heat-over-time')!;
    expect(chart.alternative.replaceAll('\u00a0', ' ')).toContain(
      'Servo as built (35 kg·cm, 7.4 V): the winding passes its limit after 2 min; it would burn out.',
    );
    expect(JSON.stringify(chart.specification)).not.toMatch(/winding 598|case 485/);
    expect(JSON.stringify(chart.specification)).toContain('winding past its limit');
  });
});
