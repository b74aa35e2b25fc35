import { describe, expect, it } from 'vitest';
import { type SafetyFigures, safetyFigures } from '../../src/assess/safety/safety-figures.js';
import type { ReportDocument } from '../../src/report/index.js';
import { buildSheet } from '../../src/report/pages.js';
import { blocksOf, documentText } from './document-text.js';
import { createDrawnAssessment } from './fixture.js';
import { readTemplates } from './templates.js';

const templates = readTemplates();
const assessment = createDrawnAssessment();
const motion = { showSpeedMPerS: 0.5, freeSpeedMPerS: 3.5, tipMassKg: 0.16, crushDistanceM: 0.071 };
const figuresOf = (id: string): SafetyFigures =>
  safetyFigures(assessment, assessment.candidates.find((one) => one.id === id)!, motion);

function sheetOf(safety: SafetyFigures, cautionCount = safety.cautions.length): ReportDocument {
  return buildSheet(assessment, safety, templates, '2026-01-01', cautionCount);
}
const textOf = (safety: SafetyFigures, cautionCount?: number) =>
  documentText(sheetOf(safety, cautionCount)).replaceAll('\u00a0', ' ');

const servo = figuresOf('servo-now');
const worm = figuresOf('worm-relay');

describe('the safety sheet', () => {
  it('says which drive it is about, and whether that is the one that is built', () => {
    expect(textOf(servo)).toContain(
      'Drive: Servo as built (35 kg·cm, 7.4 V). The drive that is built today.',
    );
    expect(textOf(worm)).toContain('Not the drive that is built today');
  });

  it('says what cutting the power does before anything else', () => {
    const answers = (safety: SafetyFigures) =>
      blocksOf(sheetOf(safety).sections[0]!.blocks, 'paragraph').filter(({ style }) => style === 'answer');
    const said = [servo, worm].map((safety) => answers(safety).map(({ text }) => text[0]!.text));
    expect(said.map((texts) => texts.length)).toEqual([1, 1]);
    expect(said[0]![0]).toMatch(/^Cutting the power drops it: it falls to its lower stop in as little as /);
    expect(said[1]![0]).toMatch(/does not free a hand: this drive keeps its grip/);
  });

  it.each([
    ['may-fall', 'Cutting the power may drop it: by its listed figures it stays, but in 4 % of the draws'],
    ['sinks', 'Cutting the power lets it sink'],
  ] as const)('has words for a feature that %s', (answer, words) => {
    const powerCut = { ...worm.powerCut, answer, fallProbability: 0.04, fallS: 0.6, energyJ: 1 };
    expect(textOf({ ...worm, powerCut })).toContain(words);
  });

  it('tells both states of the motor leads in one sentence', () => {
    const open = { does: 'falls', fallS: 0.62 } as const;
    const powerCut = { ...servo.powerCut, open, shorted: { ...open, fallS: 1.9 } };
    expect(textOf({ ...servo, powerCut })).toContain(
      'with open motor leads it falls in 0.62 s, with shorted ones it falls in 1.9 s',
    );
  });

  it('marks a cautious figure as one, and no other', () => {
    const [figures] = blocksOf(sheetOf(servo).sections[0]!.blocks, 'facts');
    const shown = figures!.items.map(({ value }) => value.replaceAll('\u00a0', ' '));
    expect(figures!.style).toBe('headline');
    expect(shown.filter((value) => value.startsWith('up to'))).toHaveLength(3);
    expect(textOf({ ...servo, isCautious: false })).not.toMatch(/up to|as little as/);
  });

  it('never leaves a figure out in silence', () => {
    const motionless = { showSpeedMPerS: null, showEnergyJ: null, freeSpeedMPerS: 3.5 };
    const heat = {
      caseTemperatureK: null,
      heldCaseTemperatureK: null,
      neverSettles: false,
      burnsOut: false,
      heldBurnsOut: false,
      windingLimitK: null,
    };
    const text = textOf({ ...servo, motion: motionless, heat, movingMassKg: null });
    for (const name of ['The tip moves at', 'What moves weighs', 'Heat'])
      expect(text).toContain(`${name}: not known`);
  });

  it('leaves lines for what only the maker knows: the switch, who holds the stop, who was shown it', () => {
    const blanks = blocksOf(sheetOf(servo).sections[0]!.blocks, 'facts').find(
      ({ style }) => style === 'blank',
    );
    const labels = blanks!.items.map(({ label }) => label).join('\n');
    for (const word of ['stop switch', 'signature', 'Shown to', 'trapped hand'])
      expect(labels).toContain(word);
    expect(blanks!.items.filter(({ value }) => value !== '')).toEqual([]);
  });

  it('shows the worst cautions and counts the others; the standing line always stays', () => {
    const text = textOf(servo, 1);
    expect(text).toContain('Severe  44 % of stall');
    expect(text).toContain('1 more in the report');
    for (const count of [0, 1, 2])
      expect(textOf(servo, count)).toContain(
        'licensed practice come first. This is a calculation, not an approval',
      );
    expect(textOf(servo)).not.toContain('more in the report');
  });

  it('takes neither commands nor signs that steer from a file', () => {
    const text = textOf({ ...servo, label: '\u001b[31m{{drive}} **x**\u202e' });
    expect(text).toContain('Drive: {{drive}} **x**.');
  });
});
