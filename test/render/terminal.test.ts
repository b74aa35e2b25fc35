import { describe, expect, it } from 'vitest';
import { displayWidth, fitted, wrapped } from '../../src/render/terminal/display-width.js';
import { renderTerminal } from '../../src/render/terminal/render-terminal.js';
import { summarise } from '../../src/report/index.js';
import { createAssessment, createDrawnAssessment } from '../report/fixture.js';
import { readTemplates } from '../report/templates.js';
import { variants } from '../report/variants.js';

const templates = readTemplates();
const settings = { width: 80, colour: false };
const text = renderTerminal(summarise(createAssessment(), templates, ''), {
  ...settings,
  written: 'out/report.pdf',
});

describe('the ranking on a terminal', () => {
  it('says question, answer, reasons, worst caution, next measurement and where the report is', () => {
    const flat = text.replace(/\s+/g, ' ');
    for (const part of [
      'Should the heron',
      'Change to Worm gearmotor',
      '3. The price of the worm',
      'Severe, 412 N:',
      '5 more in the report, 2 of them severe.',
      'Measure next: hold current of the servo',
      'Report: out/report.pdf',
      '118 figures given, 61 assumed',
    ]) {
      expect(flat).toContain(part);
    }
  });

  it('ranks every candidate on a line of its own, figures to the right', () => {
    const rows = text.split('\n').filter((line) => /^ \d[* ] \S/.test(line));
    expect(rows).toHaveLength(5);
    expect(rows[0]).toMatch(/182 +661 +0 +45 +0\.81$/);
    expect(rows[2]).toMatch(/^ 3\* Servo/);
    expect(text).toContain('* exists today');
    expect(rows[4]).toMatch(/– +661/);
  });

  for (const [name, create] of Object.entries(variants)) {
    it(`fits into 80 columns when: ${name}`, () => {
      for (const width of [80, 60]) {
        const lines = renderTerminal(summarise(create(), templates, ''), { ...settings, width }).split('\n');
        expect(Math.max(...lines.map(displayWidth))).toBeLessThanOrEqual(width);
      }
    });
  }

  it('with draws says how sure it is and gives intervals, packs and leads', () => {
    const drawn = renderTerminal(summarise(createDrawnAssessment(), templates, ''), settings);
    expect(drawn.replace(/\s+/g, ' ')).toContain(
      'Likely: the worm beats the servo of today in 84 % of 2,048 draws',
    );
    const rows = drawn.split('\n').filter((line) => /^ \d[* ] \S/.test(line));
    expect(rows[0]).toMatch(/✓ 5 limits +173 \(127–191\) +1 +661 +0 +45 +0\.81 +62 %$/);
    expect(rows[1]).toMatch(/paper 61 % +143 \(105–158\)/);
    expect(rows[2]).toMatch(/54 \(40–60\) +2 +384 3\.91 +0 +0\.47 +20 %$/);
    expect(drawn).toContain('min packs   g    W EUR score leads');
    expect(drawn).toContain('118 figures given, 61 assumed, 2,048 draws.');
  });

  it('cuts names before figures, and names below what a candidate fails', () => {
    const summary = summarise(createDrawnAssessment(), templates, '');
    const [first, ...others] = summary.rows;
    const long = {
      ...first!,
      candidate: 'A name of more columns than there are',
      holding: '15.19',
      mass: '10440',
    };
    const failing = { passes: false, limitsInShort: '✗ 2 limits', limits: '✗ fails: torque margin, runtime' };
    const rows = [long, ...others.map((row) => ({ ...row, ...failing }))];
    const lines = renderTerminal({ ...summary, rows }, settings).split('\n');
    expect(lines.find((line) => line.startsWith(' 1'))).toMatch(/…\s.* 10440 15\.19 /);
    expect(lines).toContain('   2: ✗ fails: torque margin, runtime');
    expect(Math.max(...lines.map(displayWidth))).toBeLessThanOrEqual(80);
  });

  it('says what passing on paper is, where a candidate does', () => {
    const drawn = renderTerminal(summarise(createDrawnAssessment(), templates, ''), settings);
    expect(drawn).toContain('paper: passes as the figures stand');
    expect(text).not.toContain('paper:');
  });

  it('heads the column of money where no currency is named', () => {
    const assessment = createAssessment();
    const about = { ...assessment.study.about, currency: '' };
    const nameless = summarise({ ...assessment, study: { ...assessment.study, about } }, templates, '');
    expect(renderTerminal(nameless, settings)).toMatch(/ W cost score/);
  });

  it('repeats what was tried, from what to what', () => {
    const assessment = createAssessment();
    const tried = [
      { item: 'feature.mass', from: '860 g', to: '700 g' },
      { item: 'noise.must', from: 'at most 60 dB', to: '' },
    ];
    const study = { ...assessment.study, tried };
    const shown = renderTerminal(summarise({ ...assessment, study }, templates, ''), settings);
    expect(shown).toContain('What if: feature.mass = 700 g instead of 860 g');
    expect(shown).toContain('What if: noise.must = blank instead of at most 60 dB');
    expect(text).not.toContain('What if:');
  });

  it('lets no control character through, from the study or the path', () => {
    const nasty = renderTerminal(summarise(createAssessment(), templates, ''), {
      ...settings,
      written: 'a\u001b[2Jb',
    });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
    expect(nasty).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
    expect(nasty).toContain('Report: ab');
  });

  it('says the same with colour, and colours only when asked', () => {
    const colourful = renderTerminal(summarise(createAssessment(), templates, ''), {
      width: 80,
      colour: true,
    });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour is made of it
    const bare = colourful.replace(/\u001b\[\d+m/g, '');
    expect(colourful).not.toBe(bare);
    expect(bare).toBe(renderTerminal(summarise(createAssessment(), templates, ''), settings));
  });
});

describe('columns of a terminal', () => {
  it('count what is seen: wide forms twice, marks not at all', () => {
    expect([displayWidth('heron'), displayWidth('鷺'), displayWidth('🦢'), displayWidth('e\u0301')]).toEqual([
      5, 2, 2, 1,
    ]);
  });

  it('are filled or cut exactly', () => {
    expect(fitted('ab', 4)).toBe('ab  ');
    expect(fitted('ab', 4, 'right')).toBe('  ab');
    expect(fitted('abcdef', 4)).toBe('abc…');
    expect(displayWidth(fitted('鷺鷺鷺', 4))).toBe(4);
  });

  it('break between words and inside those that are too long', () => {
    expect(wrapped('one two three', 7)).toEqual(['one two', 'three']);
    expect(wrapped('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
  });
});
