import { describe, expect, it } from 'vitest';
import { runtimeChart } from '../../src/report/charts/runtime-chart.js';
import { reportContext } from '../../src/report/context.js';
import { inputName } from '../../src/report/words/outcome-words.js';
import type { Provenance } from '../../src/study/provenance.js';
import { createDrawnAssessment } from './fixture.js';
import { readTemplates } from './templates.js';

const entry = (path: string, field: string, shown: string) =>
  ({ path, field, shown, owner: 'big' }) as Provenance;

describe('what a listing says for a further voltage', () => {
  const other = 'candidates.big.sheet.otherVoltages.0';
  const all = [
    entry('candidates.big.sheet.ratedVoltageV', 'rated_voltage', '7.4 V'),
    entry('candidates.big.sheet.stallEffort', 'stall_torque', '8 N·m'),
    entry(`${other}.ratedVoltageV`, 'rated_voltage', '8.4 V'),
    entry(`${other}.stallEffort`, 'stall_torque', '9 N·m'),
  ];

  it('names that voltage, so that no figure seems to stand there twice', () => {
    expect(all.map((one) => inputName(one, all).replaceAll('\u00a0', ' '))).toEqual([
      'rated voltage',
      'stall torque',
      'further rated voltage',
      'stall torque at 8.4 V',
    ]);
  });
});

describe('the runtime chart', () => {
  const drawnWith = (limitMin: number | null, enoughMin: number | null) => {
    const assessment = createDrawnAssessment();
    const [first] = assessment.study.criteria;
    const must = limitMin === null ? null : { direction: 'at-least' as const, bound: limitMin * 60 };
    const study = {
      ...assessment.study,
      criteria: [{ ...first!, id: 'runtime' as const, must }],
      targetRuntimeS: enoughMin === null ? null : enoughMin * 60,
    };
    const context = reportContext(createDrawnAssessment({ study }), readTemplates(), '2026-01-01');
    const { specification, alternative } = runtimeChart(context);
    type Layer = { data?: { values: { align?: string }[] }; mark: { align?: object | string } };
    const layers = specification.layer as Layer[];
    const named = layers.find(({ mark }) => typeof mark.align === 'object')!;
    return { labels: named.data!.values, alternative: alternative.replaceAll('\u00a0', ' ') };
  };

  it('names the time that a limit asks for beside the one that would be enough', () => {
    const { labels, alternative } = drawnWith(20, 160);
    expect(labels).toMatchObject([
      { minutes: 20, align: 'right' },
      { minutes: 160, align: 'center' },
    ]);
    expect(alternative).toContain('A limit asks for at least 20 min.');
  });

  it('gives lines that stand close together one label, and none where nothing is asked', () => {
    expect(drawnWith(150, 160).labels).toMatchObject([{ minutes: 160, align: 'right' }]);
    expect(drawnWith(null, null).labels).toEqual([]);
  });
});
