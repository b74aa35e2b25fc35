import { beforeAll, describe, expect, it } from 'vitest';
import { type Comparison, compareRecords } from '../../src/app/compare.js';
import { studyChanges } from '../../src/app/compare-changes.js';
import { explainChanges } from '../../src/app/compare-effects.js';
import { comparisonText } from '../../src/app/compare-text.js';
import type { InputFile } from '../../src/input/files.js';
import { emptyFolder, quickDisk } from './fixture.js';
import { drawnTools, filedResults, measuredStudy, readings, studyFrom } from './measured-study.js';
import { decided, decideRequest } from './small-study.js';

type Filed = ReturnType<typeof filedResults>;

async function compared(before: InputFile[], after: InputFile[]) {
  const archive = emptyFolder();
  const words = { choose: 'tail-servo', decision: 'keep', because: 'it was there' } as const;
  const first = await decided(decideRequest(archive, before, words), drawnTools);
  const second = await decided(decideRequest(archive, after, { ...words, date: '2026-05-01' }), drawnTools);
  const request = { candidate: null, templates: {}, version: '0.1.0', progress() {} };
  const result = compareRecords({ records: [first, second], ...request }, quickDisk);
  if (!result.ok || result.value.comparison === null) throw new Error('not compared');
  return { comparison: result.value.comparison, filed: [first, second].map(filedResults) as [Filed, Filed] };
}

const servoIn = <T>(entries: readonly T[], idOf: (entry: T) => string): T =>
  entries.find((entry) => idOf(entry) === 'tail-servo')!;
const filedMedianS = ({ candidates }: Filed): number =>
  servoIn<Filed>(candidates, ({ id }) => id).uncertain.runtimeS.median;
const moveOf = (moves: Comparison['explained']['together']): Record<string, number | null> =>
  servoIn(moves, ({ candidate }) => candidate).differences;

describe('a measured.csv that was added', { timeout: 120_000 }, () => {
  let comparison: Comparison;
  let filed: [Filed, Filed];
  beforeAll(async () => {
    const without = measuredStudy();
    ({ comparison, filed } = await compared(without, measuredStudy({ 'measured.csv': () => readings })));
  }, 120_000);

  it('explains what it did to the median, as the two reports state it', () => {
    const movedS = filedMedianS(filed[1]) - filedMedianS(filed[0]);
    expect(Math.abs(movedS)).toBeGreaterThan(300);
    const { singles, together } = comparison.explained;
    expect(moveOf(together).runtime).toBeCloseTo(movedS, 6);
    expect(singles.map(({ change }) => change.name)).toEqual(['measured runtime', 'measured hold_current']);
    for (const { moves } of singles) expect(Math.abs(moveOf(moves).runtime!)).toBeGreaterThan(60);
  });

  it('adds up: each reading alone, and what they do only in company', () => {
    const { singles, together, company } = comparison.explained;
    for (const figure of Object.keys(moveOf(together))) {
      const sum = [company, ...singles.map(({ moves }) => moves)].reduce(
        (total, moves) => total + moveOf(moves)[figure]!,
        0,
      );
      expect(sum, figure).toBeCloseTo(moveOf(together)[figure]!, 9);
    }
    expect(moveOf(company).runtime).not.toBe(0);
  });

  it('is computed on the draws of the reports: every figure and the verdict are the filed ones', () => {
    const { earlier, later } = comparison.explained;
    for (const [standing, results] of [
      [earlier, filed[0]],
      [later, filed[1]],
    ] as const) {
      expect(standing.draws).toBe(512);
      expect(standing.verdict.sentence).toBe(results.verdict.sentence);
      for (const candidate of standing.candidates) {
        const kept = results.candidates.find(({ id }: Filed) => id === candidate.id);
        expect(candidate.uncertain.runtimeS).toEqual(kept.uncertain.runtimeS);
        expect(candidate.leadProbability).toBe(results.certainty.candidates[candidate.id].leadProbability);
      }
    }
  });

  it('is told in 80 columns with the draws, the calibration, and that the parts are not the whole', () => {
    const text = comparisonText(comparison, 80);
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(text).toMatch(/^ {2}measured runtime: none → 80 min\n {4}\(78–82\) +\+\d/m);
    expect(text).toMatch(/^ {2}only in company +[+−]\d/m);
    expect(text).toContain('does not add up');
    expect(text.replaceAll('\n', ' ')).toMatch(
      /medians of 512 draws \(seed 1\).* after calibration by measured\.csv/,
    );
  });
});

const judging = { progress() {} };

describe('other changes on top of readings', { timeout: 120_000 }, () => {
  it('alone, a single one explains all: a reading, a spread, a weight, where figures come from', () => {
    const measured = { 'measured.csv': () => readings };
    const before = studyFrom(measuredStudy(measured));
    const edits: [string[], Parameters<typeof measuredStudy>[0]][] = [
      [['measured runtime'], { 'measured.csv': () => readings.replace('80 min', '72 min') }],
      [['capacity of counter-pack'], { ...measured, 'packs.csv': (text) => text.replace('±6%', '±1%') }],
      [
        ['criterion runtime'],
        { ...measured, 'criteria.csv': (text) => text.replace('runtime,3', 'runtime,9') },
      ],
      [
        ['figures_from of tail-worm'],
        { ...measured, 'candidates.csv': (text) => text.replace(',listing,', ',data-sheet,') },
      ],
    ];
    for (const [names, edit] of edits) {
      const after = studyFrom(measuredStudy(edit));
      const { singles, together } = explainChanges(before, after, studyChanges(before, after), judging);
      expect(singles.map(({ change }) => change.name)).toEqual(names);
      expect(singles[0]!.moves).toEqual(together);
      expect(Object.values(moveOf(together)).some((difference) => difference !== 0)).toBe(true);
    }
  });

  it('a reading that contradicts the study leaves nominal figures, and that is said', async () => {
    const wrong = { 'measured.csv': () => readings.replace('80 min ±2 min', '300 min ±2 min') };
    const { comparison } = await compared(measuredStudy(), measuredStudy(wrong));
    expect(comparison.explained.later.bandsGiven).toBe(false);
    const text = comparisonText(comparison, 80).replaceAll(/\n */g, ' ');
    expect(text).toContain('whose readings its draws do not meet: nominal there');
    expect(text).toMatch(/measured runtime alone: .*No bands, figures nominal\./);
  });
});
