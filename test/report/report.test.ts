import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/assessment.js';
import { buildReport } from '../../src/report/pages.js';
import { blocksOf, blocksText, documentText, sectionOf } from './document-text.js';
import { createAssessment, createCandidates, createDrawnAssessment } from './fixture.js';
import { createStudy } from './fixture-study.js';
import { readTemplates } from './templates.js';
import { variants } from './variants.js';

const templates = readTemplates();
const report = buildReport(createAssessment(), templates, '2026-01-01');

describe('the first page', () => {
  const text = blocksText(sectionOf(report, 'answer').blocks);

  it('carries question, answer and all reasons', () => {
    const { study, verdict } = createAssessment();
    for (const part of [study.about.question, verdict.sentence, ...verdict.reasons])
      expect(text).toContain(part);
  });

  it('ranks every candidate with limits, runtime, mass, power, cost, hours and score', () => {
    expect(text).toContain('| worm gearmotor | ✓ passes 5 limits | 182 | 661 | 0 | 45 | 14 | 0.81');
    expect(text).toContain(
      '| position-hold servo | ✗ fails: runtime, torque margin | 57 | 384 | 4.12 | 0 | 0 | 0.47',
    );
    expect(text).toContain(
      '| not judged: fit in its space and mass on the body | 90 | – | 4.12 | 0 | 0 | 0.44',
    );
    expect(text).toContain('✗ fails: moving | – | 661');
  });

  it('gives the units of its figures in the head of the table', () => {
    expect(text).toContain('Runtime min | On body g | Holding W | Cost EUR | Work h');
  });

  it('says what to measure next, how, with what and how long it takes', () => {
    expect(text).toContain('Measure next: hold current of the servo');
    expect(text).toContain('read after ten seconds');
    expect(text).toContain('Multimeter, 10 min');
  });

  it('says how many figures were given and assumed', () => {
    expect(text).toContain('118 figures given (66 %), 61 assumed');
  });

  it('states the finding of its chart with every runtime and the target', () => {
    const [chart] = blocksOf(sectionOf(report, 'answer').blocks, 'chart');
    const alternative = chart!.alternative.replaceAll('\u00a0', ' ');
    for (const part of ['2 of 5', '120 min', '182 min', '57 min', '90 min'])
      expect(alternative).toContain(part);
  });
});

describe('the pages after it', () => {
  it('name the figure of the hold current that the result uses', () => {
    const charts = blocksOf(sectionOf(report, 'why').blocks, 'chart');
    const holding = charts.find((chart) => chart.name === 'hold-current-figures')!;
    expect(holding.alternative.replaceAll('\u00a0', ' ')).toContain(
      'linear rule 1.73 A, pulse model 0.555 A, measured 0.557 A; used: measured',
    );
  });

  it('say what a measured hold current does: replace the model, or weight the draws', () => {
    const why = (changes: Partial<Assessment>) =>
      blocksText(sectionOf(buildReport(createAssessment(changes), templates, ''), 'why').blocks);
    expect(why({})).toContain('entered in candidates.csv takes the place of both');
    const asModelled = createCandidates().map(({ nominal, ...one }) => ({
      ...one,
      nominal: { ...nominal, holdCurrentUsed: 'pulse-model' as const },
    }));
    expect(why({ candidates: asModelled })).toContain('None is measured.');
    const study = createStudy(asModelled);
    const measured: typeof study.measured = [
      { quantity: 'hold_current', value: 1.4, halfWidth: 0.07, note: '' },
    ];
    const read = why({ candidates: asModelled, study: { ...study, measured } });
    expect(read).toContain('in measured.csv, weights the draws');
    expect(read.replaceAll('\u00a0', ' ')).toContain('measured 1.4 A');
  });

  it('show who cannot move without a runtime and say why', () => {
    const page = report.sections.find((section) => section.title.includes('two-start'))!;
    expect(blocksText(page.blocks)).toContain('No runtime: cannot lift the feature at 0°');
    expect(blocksText(sectionOf(report, 'why').blocks)).toContain('Left out of the charts of loop and run');
  });

  it('join the same caution about several candidates and put the most severe first', () => {
    const cautions = blocksOf(sectionOf(report, 'cautions').blocks, 'caution');
    expect(cautions.map((caution) => caution.severity)).toEqual(['severe', 'severe', 'caution', 'note']);
    expect(blocksText([cautions[0]!])).toContain('Also: Screw actuator under the neck 268 N');
  });

  it('ask nothing about a change that pays for itself where nobody leads', () => {
    const open = buildReport(createDrawnAssessment({ leader: null }), templates, '');
    expect(blocksText(sectionOf(open, 'order').blocks)).not.toContain('paid for itself');
  });

  it('name in one box only candidates of which the same is true', () => {
    const warm = (candidate: string, text: string) => ({
      ...{ code: 'slower-when-warm', severity: 'severe' as const, candidate, figure: '49 °C', text },
      action: 'Rehearse with a warm drive.',
    });
    const among = createAssessment({
      cautions: [
        warm('worm-relay', 'With its winding at 52 °C a move can no longer be made.'),
        warm('screw-strut', 'With its winding at 49 °C a move takes 15 % longer than cold.'),
        warm('servo-now', 'With its winding at 61 °C a move takes 9 % longer than cold.'),
      ],
    });
    const text = blocksText(sectionOf(buildReport(among, templates, ''), 'cautions').blocks);
    expect(text).toMatch(/no longer be made\. Rehearse/);
    expect(text).toMatch(/15 % longer than cold\. Also: Servo as built[^;]* 49 °C\. Rehearse/);
  });

  it('carry every standing caution and the line about codes and licensed practice', () => {
    const text = blocksText(sectionOf(report, 'cautions').blocks);
    for (const word of [
      'Lithium',
      'pinch',
      'fall',
      'body',
      'Spectators',
      'power-on',
      'licensed practice',
      'not an approval',
    ]) {
      expect(text).toContain(word);
    }
  });

  it('list every figure as read, with its origin', () => {
    const { provenance } = createAssessment().study;
    const table = blocksOf(sectionOf(report, 'inputs').blocks, 'table').at(-1);
    expect(table!.rows.filter((row) => !row.group)).toHaveLength(provenance.length);
    expect(blocksText([table!])).toContain('mass | given | 860 g ±25 g | 860 g | study.csv:2');
    expect(blocksText([table!])).toContain('price | given | 46 EUR');
  });

  it('give version, model version, seed and the hash of the inputs', () => {
    const text = blocksText(sectionOf(report, 'provenance').blocks);
    for (const part of ['0.1.0', 'Model version: 1', 'Seed: 1', createAssessment().inputHash])
      expect(text).toContain(part);
  });
});

describe('the report', () => {
  it('contains no control character of what was read', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
    expect(documentText(report)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]|\[31m/);
  });

  it('follows the order of the contents and drops what is not in it', () => {
    const short = { ...templates, 'report/contents.md': '- cautions\n- answer\n' };
    expect(buildReport(createAssessment(), short, '').sections.map((section) => section.name)).toEqual([
      'cautions',
      'answer',
    ]);
  });

  it('names the line of a section that does not exist', () => {
    const wrong = { ...templates, 'report/contents.md': '- answer\n- awnser\n' };
    expect(() => buildReport(createAssessment(), wrong, '')).toThrow(
      'report/contents.md, line 2: there is no section awnser',
    );
  });

  it('uses the words of a changed template', () => {
    const changed = { ...templates, 'report/letterhead.md': 'Workshop by the river, for {{prepared_for}}' };
    expect(documentText(buildReport(createAssessment(), changed, ''))).toContain(
      'Workshop by the river, for the lantern group',
    );
  });

  for (const [name, create] of Object.entries(variants)) {
    it(`has no gap when: ${name}`, () => {
      const text = documentText(buildReport(create(), templates, '2026-01-01'));
      expect(text).not.toMatch(/undefined|null|NaN|Infinity|\{\{|\[object/);
    });
  }
});
