import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/assessment.js';
import { buildReport } from '../../src/report/pages.js';
import { blocksOf, blocksText, sectionOf } from './document-text.js';
import { createAssessment, createDrawnAssessment } from './fixture.js';
import { readTemplates } from './templates.js';

const templates = readTemplates();
const reportOf = (assessment: Assessment) => buildReport(assessment, templates, '2026-01-01');
const namesOf = (assessment: Assessment) => [
  ...new Set(reportOf(assessment).sections.map((section) => section.name)),
];
const drawn = reportOf(createDrawnAssessment());
const textOf = (name: string) => blocksText(sectionOf(drawn, name).blocks);
const rowOf = (name: string, start: string) =>
  textOf(name)
    .split('\n')
    .find((line) => line.startsWith(start)) ?? '';

describe('the pages of a report', () => {
  it('stand in the order of the contents, the first three as the answer and the rest as appendix', () => {
    expect(namesOf(createDrawnAssessment())).toEqual([
      ...['answer', 'why', 'cautions', 'before-you-redesign', 'power-cut', 'heat', 'mass-fit-money', 'order'],
      ...[
        'spread',
        'day',
        'candidate',
        'further-cautions',
        'working',
        'inputs',
        'not-modelled',
        'provenance',
      ],
    ]);
    expect(drawn.sections.map(({ part }) => part).slice(0, 4)).toEqual([
      'answer',
      'answer',
      'answer',
      'appendix',
    ]);
  });

  it('are left out where there is nothing to show', () => {
    const plain = namesOf(createAssessment());
    for (const name of ['before-you-redesign', 'order', 'spread', 'day']) expect(plain).not.toContain(name);
    for (const name of ['power-cut', 'heat', 'mass-fit-money', 'working']) expect(plain).toContain(name);
  });

  it.each([
    ['before-you-redesign', { lesserChanges: [] }],
    ['day', { day: null }],
    ['spread', { certainty: null }],
    ['power-cut', { candidates: [] }],
    ['working', { candidates: [] }],
  ] as [string, Partial<Assessment>][])('leave out %s when its data are missing', (name, without) => {
    expect(namesOf(createDrawnAssessment())).toContain(name);
    expect(namesOf(createDrawnAssessment(without))).not.toContain(name);
  });

  it('keep the break-even where there are no draws, and the draws where there is no break-even', () => {
    const order = (changes: Partial<Assessment>) =>
      blocksText(sectionOf(reportOf(createDrawnAssessment(changes)), 'order').blocks);
    expect(order({ certainty: null })).toContain('paid for after 34 events');
    expect(order({ certainty: null })).not.toContain('Which input moves the lead?');
    expect(order({ breakEven: null })).toContain('Which input moves the lead?');
    expect(order({ breakEven: null })).not.toContain('paid for');
  });

  it('draw no balance of a change that saves nothing, and say so', () => {
    const breakEven = {
      ...createDrawnAssessment().breakEven!,
      ...{ valuePerEventMoney: 0, parts: [], eventCount: null, sentence: 'It never pays for itself.' },
    };
    const order = sectionOf(reportOf(createDrawnAssessment({ breakEven })), 'order').blocks;
    expect(blocksText(order)).toContain('It never pays for itself.');
    expect(blocksOf(order, 'chart').map(({ name }) => name)).not.toContain('break-even');
  });

  it('leave out the heat where no mass is known', () => {
    const cold = createDrawnAssessment().candidates.map((one) => ({
      ...one,
      nominal: { ...one.nominal, windingTemperatureK: null },
    }));
    expect(namesOf(createDrawnAssessment({ candidates: cold }))).not.toContain('heat');
  });

  it('go when their line is taken out of the contents', () => {
    const without = templates['report/contents.md']!.replace('- heat\n', '').replace('- order\n', '');
    const short = buildReport(createDrawnAssessment(), { ...templates, 'report/contents.md': without }, '');
    const names = short.sections.map((section) => section.name);
    expect(names).not.toContain('heat');
    expect(names).not.toContain('order');
    expect(names).toContain('mass-fit-money');
  });

  it('ask what the reader asks', () => {
    const titles = [
      'before-you-redesign',
      'power-cut',
      'heat',
      'mass-fit-money',
      'order',
      'day',
      'working',
    ].map((name) => blocksOf(sectionOf(drawn, name).blocks, 'heading')[0]!.text);
    expect(titles.filter((title) => !title.endsWith('?'))).toEqual([]);
  });
});

describe('what stands on the pages', () => {
  it('the cautions: what is severe and told elsewhere is named, and their count is that of the boxes there', () => {
    const assessment = createDrawnAssessment();
    const failing = assessment.candidates.find((one) => one.passes === false && !one.isBaseline)!;
    const [model] = assessment.cautions;
    const raised = { ...model!, candidate: failing.id, severity: 'severe' as const };
    const cautions = [
      ...assessment.cautions,
      { ...raised, code: 'over-voltage', figure: '14.6 V' },
      { ...raised, code: 'sticks', severity: 'note' as const, figure: '1' },
    ];
    const report = reportOf(createDrawnAssessment({ cautions }));
    const here = blocksText(sectionOf(report, 'cautions').blocks).replaceAll('\u00a0', ' ');
    expect(here).toContain(
      `1 severe caution only about who fails a limit, under “Further cautions”: ${failing.label}.`,
    );
    const boxes = blocksOf(sectionOf(report, 'further-cautions').blocks, 'caution').length;
    expect(here).toContain(`${boxes} cautions about single candidates`);
    expect(textOf('cautions')).not.toContain('only about who fails');
  });

  it('a limit that holds in too few draws passes on paper, without tick and tone, in limits and ladder alike', () => {
    const assessment = createDrawnAssessment();
    const certainty = structuredClone(assessment.certainty!);
    const leader = assessment.candidates[0]!;
    certainty.candidates[leader.id]!.limitProbabilities[0] = 0.48;
    const lesserChanges = assessment.lesserChanges.map((change) => ({ ...change, passProbability: 0.37 }));
    const report = reportOf(createDrawnAssessment({ certainty, lesserChanges }));
    const cells = (section: string) =>
      blocksOf(sectionOf(report, section).blocks, 'table').flatMap(({ rows }) =>
        rows.map(({ cells: all }) => all.at(-1)!),
      );
    const saying = (section: string, words: string) =>
      cells(section).filter(({ text }) =>
        text
          .map((span) => span.text)
          .join('')
          .startsWith(words),
      );
    expect(saying('candidate', 'passes on paper, 48')).toMatchObject([{}]);
    expect(saying('candidate', 'passes on paper, 48')[0]).not.toHaveProperty('tone');
    expect(saying('before-you-redesign', 'on paper, 37')).toHaveLength(4);
    expect(saying('before-you-redesign', '✓')).toEqual([]);
  });

  it('the inputs: every cue and every criterion, so that a score can be followed', () => {
    const { show, criteria } = createDrawnAssessment().study;
    const tables = blocksOf(sectionOf(drawn, 'inputs').blocks, 'table');
    const cues = tables[0]!.rows.filter(({ group }) => !group);
    expect(cues).toHaveLength(show.leadIn.length + show.loop.length);
    expect(tables[1]!.rows).toHaveLength(criteria.length);
    const text = textOf('inputs').replaceAll('\u00a0', ' ');
    expect(text).toMatch(/Runtime \| \d+ \| \d+ % \| \d+ min \| \d+ min \| ≥ \d+ min/);
  });

  it('the ladder: gains with their bands, burdens, gain per 100 g, limits over the draws, the best pair', () => {
    expect(rowOf('before-you-redesign', 'Assist spring')).toBe(
      'Assist spring on the hinge | +29 (16–43) | +62 | −1.90 | +55 | 12 | 4 | +56 | +0.15 (0.08–0.22) | ✓ 88 %',
    );
    expect(rowOf('before-you-redesign', 'Slower moves')).toContain('✗ 20 %');
    expect(textOf('before-you-redesign')).toContain(
      'The best pair: Rest on the stop, and assist spring on the hinge.',
    );
    expect(textOf('before-you-redesign')).toContain(
      'Assist spring on the hinge makes the fall harder by a little.',
    );
    expect(textOf('before-you-redesign')).toContain('A latch that holds a pose: no cue holds long enough');
  });

  it('the power cut: both states of the leads, which decides, and how often it falls', () => {
    expect(rowOf('power-cut', '3 |')).toBe(
      '3 | Servo as built (35 kg·cm, 7.4 V) | do not lock | 0.62 | 2.3 | 1.3 | 1.9 | 2.3 | 0.31 | open | 0',
    );
    expect(rowOf('power-cut', '1 |')).toContain('lock, even shaken | stays | stays | open');
  });

  it('the heat: settled, held for ever, the limit, and the share of on-time where a drive is rated for one', () => {
    expect(rowOf('heat', '3 |')).toContain('never settles | never settles | 100 | after 11 min');
    expect(rowOf('heat', '2 |')).toContain('runs 31 %, rated 25 %');
  });

  it('a slide has neither a hinge nor a tip', () => {
    const { study, ...rest } = createDrawnAssessment();
    const onRail = { ...study, feature: { ...study.feature, kind: 'slide' as const } };
    const report = reportOf({ ...rest, study: onRail });
    const tables = (name: string) => blocksOf(sectionOf(report, name).blocks, 'table');
    expect(blocksText([...tables('power-cut'), ...tables('candidate')])).not.toMatch(
      /tip m\/s|at the tip|tip at|near the hinge/i,
    );
    expect(blocksText([...tables('power-cut')])).toContain('| speed m/s |');
    expect(textOf('power-cut')).toContain('| tip m/s |');
  });

  it('the box: turned the best of six ways, with what is left on its tightest side', () => {
    expect(rowOf('mass-fit-money', '1 |')).toContain('122 × 58 × 40 | 30 | ✓ yes | 45 | 14 | 168 | 213');
    expect(textOf('mass-fit-money')).toContain('260 × 100 × 70 mm');
  });

  it('the order: flips, what to measure and how well, views, weights, break-even', () => {
    expect(rowOf('order', 'Current while it holds')).toContain(
      '0.56 A | 0.31 A | Servo as built (35 kg·cm, 7.4 V) | 12 %',
    );
    expect(rowOf('order', 'Hold current of the servo')).toContain(
      '| 30 | Hold the neck at 56°, put the meter into the servo lead, read after ten seconds. | Multimeter | 10 | ±8 % | hold_current in measured.csv',
    );
    expect(rowOf('order', 'Worm, two-start')).toBe('Worm, two-start, quick | 1 | 8 | 8 | 8 | 8');
    expect(textOf('order')).toContain('leads with mass on the body 50 %, hours of work 30 %, runtime 20 %');
    expect(textOf('order')).toContain('As good as tied: Screw actuator under the neck and Servo as built');
  });

  it('the order after measuring: before, measured, after, in the unit of the measurement', () => {
    const certainty = createDrawnAssessment().certainty!;
    const calibration = {
      measured: [
        {
          quantity: 'runtime',
          measured: 3660,
          before: { p10: 2400, median: 3540, p90: 4980, occursFraction: 1 },
          after: { p10: 3420, median: 3600, p90: 3780, occursFraction: 1 },
          unit: 'min',
        },
        {
          quantity: 'case_temperature',
          measured: 313.15,
          before: { p10: 300.15, median: 310.15, p90: 340.15, occursFraction: 1 },
          after: { p10: 308.15, median: 312.15, p90: 318.15, occursFraction: 1 },
          unit: '°C',
        },
      ],
      ...{
        effectiveSampleSize: 640,
        comparedDrawCount: 32768,
        temper: 1,
        contradiction: null,
        bandsGiven: true,
      },
      moved: [{ path: 'pack.capacityC', label: 'capacity', beforeShown: '1160 mAh', afterShown: '1105 mAh' }],
    };
    const report = reportOf(createDrawnAssessment({ certainty: { ...certainty, calibration } }));
    const text = blocksText(sectionOf(report, 'order').blocks);
    expect(text).toContain('Runtime | 59 (40–83) | 61 | 60 (57–63) | min');
    expect(text).toContain('Case temperature | 37 (27–67) | 40 | 39 (35–45) | °C');
    expect(text).toContain('Capacity: 1160 mAh → 1105 mAh');
    expect(text).toContain(
      'Of 32,768 draws of the drive of today, those that agree with what was measured are worth 640.',
    );
    expect(textOf('order')).not.toContain('drive of today, those that agree');
  });

  it('the spread: every outcome with its band, and the share of draws where it does not always occur', () => {
    expect(rowOf('spread', 'Runtime')).toContain('min | 173 (127–191) | 143 (105–158) | 54 (40–60)');
    expect(rowOf('spread', 'Energy of a fall')).toContain('1.2 (0.89–1.3), in 83 %');
  });

  it('the day: blocks, what to bring, aircraft, and how it goes with the others', () => {
    expect(rowOf('day', 'pause')).toBe('pause | off | 50–65 | 0 | 0 | allowed | yes');
    expect(textOf('day')).toContain(
      '3 | Pack (2S small pack) | For the day, and one more in case a pack is weak.',
    );
    expect(textOf('day')).toContain('By aircraft: One pack holds 9.62 Wh');
    expect(rowOf('day', '3 | Servo')).toContain('✓ does the day | 2 | 1 | 10 | 0 | 8 | 384');
    expect(rowOf('day', '5 |')).toContain('✗ cannot play the show');
  });

  it('the working: one hold in full for leader and baseline, the others named, doubts and apart figures in a line', () => {
    const lines = blocksOf(sectionOf(drawn, 'working').blocks, 'calculation');
    const headings = blocksOf(sectionOf(drawn, 'working').blocks, 'heading').map(({ text }) => text);
    expect(headings.filter((text) => text.startsWith('Hold '))).toEqual([
      'Hold “look round” at 22°',
      'Hold “look round” at 22°',
    ]);
    expect(textOf('working')).toContain('The other holds are worked in the same way');
    expect(textOf('working')).toContain('runtime 182 against 140 min');
    expect(lines.find(({ quantity }) => quantity === 'Winding resistance')).toMatchObject({
      equation: 'R = V / I_s',
      numbers: '12 V / 5.2 A',
      result: '2.31 Ω',
    });
  });
});
