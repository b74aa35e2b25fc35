import { describe, expect, it } from 'vitest';
import type { Assessment, CandidateAssessment } from '../../src/assess/assessment.js';
import { buildReport } from '../../src/report/pages.js';
import { blocksOf, blocksText, sectionOf } from './document-text.js';
import { createDrawnAssessment } from './fixture.js';
import { readTemplates } from './templates.js';

const templates = readTemplates();

/** An assessment in which the drive of today stops in its second move by the nominal figures. */
function withoutLoop(changes: Partial<CandidateAssessment> = {}): Assessment {
  const drawn = createDrawnAssessment();
  const stopped = (one: CandidateAssessment): CandidateAssessment => ({
    ...one,
    nominal: {
      ...one.nominal,
      ...{ runtimeS: null, endReason: null, loopS: null, energy: null },
      ...{ meanPackCurrentA: null, peakPackCurrentA: null, windingTemperatureK: null },
    },
    limits: [
      {
        ...one.limits[0]!,
        ...{ criterion: 'moves', passes: false, reason: 'it cannot move at 3° from the weakest bus' },
      },
    ],
    ...changes,
  });
  return {
    ...drawn,
    candidates: drawn.candidates.map((one) => (one.id === 'servo-now' ? stopped(one) : one)),
  };
}

const runsIn = (occursFraction: number) => ({
  uncertain: {
    runtimeS: { p10: 4000, median: 5000, p90: 6000, occursFraction },
    windingTemperatureK: { p10: 300, median: 310, p90: 320, occursFraction },
  },
});

describe('a candidate that cannot play the show by the nominal figures', () => {
  const report = buildReport(withoutLoop(runsIn(0.01)), templates, '');
  const why = sectionOf(report, 'why');

  it('is left out of the charts of loop and run for that reason, with the share of draws in which it can', () => {
    expect(blocksText(why.blocks)).toMatch(
      /Left out of the charts of loop and run.*Servo as built.*\(it cannot move at 3° from the weakest bus; in 1 % of the draws it can\)/,
    );
  });

  it('has no curve in which the move that it cannot make is missing', () => {
    const curves = blocksOf(why.blocks, 'chart').filter(({ name }) => name.endsWith('through-loop'));
    expect(curves.map(({ name }) => name)).toEqual(['effort-through-loop', 'current-through-loop']);
    for (const { specification } of curves)
      expect(JSON.stringify(specification)).not.toContain('Servo as built');
    expect(blocksText(why.blocks)).not.toContain('peak –');
    expect(blocksText(why.blocks)).toMatch(/Servo as built.* is not drawn, as it cannot play the loop/);
  });

  it('lacks no mass on the page about heat', () => {
    const heat = blocksText(sectionOf(report, 'heat').blocks);
    expect(heat).toMatch(/For want of a loop by the nominal figures.*Servo as built/);
    expect(heat).not.toContain('mass: Servo');
  });

  it('has no runtime when it runs in few draws, and the range of those when it runs in most', () => {
    const cells = (of: Assessment) => {
      const [ranking] = blocksOf(buildReport(of, templates, '').sections[0]!.blocks, 'table');
      const row = ranking!.rows.find(({ cells: [, name] }) =>
        JSON.stringify(name).includes('Servo as built'),
      )!;
      return row.cells.map(({ text }) => text.map((part) => part.text).join(''));
    };
    expect(cells(withoutLoop(runsIn(0.01)))).not.toContain('83 (67–100)');
    expect(cells(withoutLoop(runsIn(0.8)))).toContain('83 (67–100)');
  });
});
