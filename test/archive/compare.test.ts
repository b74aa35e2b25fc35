import { describe, expect, it } from 'vitest';
import { type Comparison, compareRecords } from '../../src/app/compare.js';
import { type StudyChange, studyChanges } from '../../src/app/compare-changes.js';
import { type ChangeEffect, explainChanges } from '../../src/app/compare-effects.js';
import { comparisonData, comparisonText } from '../../src/app/compare-text.js';
import { textOf } from '../../src/archive/digest.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import type { Candidate, Study } from '../../src/study/study.js';
import { emptyFolder, quickDisk } from './fixture.js';
import { studyFrom } from './measured-study.js';
import { decided, decideRequest, smallStudy } from './small-study.js';

const earlier = studyFrom(smallStudy());
const sketch = (study: Study, candidate: Candidate) => simulateCandidate(study, candidate, 'sketch');
const explained = (later: Study, changes: StudyChange[]) =>
  explainChanges(earlier, later, changes, { progress() {}, simulate: sketch });

type Edit = Record<string, (text: string) => string>;
const edits: [what: string, edit: Edit, names: string[]][] = [
  [
    'a figure of the study',
    { 'study.csv': (text) => text.replace('860 g ±25 g', '990 g ±25 g') },
    ['feature.mass'],
  ],
  [
    'a figure of a drive',
    { 'candidates.csv': (text) => text.replace('65 kg·cm', '58 kg·cm') },
    ['stall_torque of servo-now'],
  ],
  [
    'a figure that was blank',
    { 'study.csv': (text) => text.replace('fuse.rating,7.5,A,', '') },
    ['fuse.rating'],
  ],
  ['another pack', { 'study.csv': (text) => text.replace('P-2S-13,,', 'P-2S-22,,') }, ['pack.choice']],
  [
    'a figure of the pack',
    { 'packs.csv': (text) => text.replace('1300 mAh', '1200 mAh') },
    ['capacity of P-2S-13'],
  ],
  [
    'the cue list',
    { 'show.csv': (text) => `${text.trimEnd()}\n${text.trimEnd().split('\n').at(-1)}\n` },
    ['cue list'],
  ],
  ['a load', { 'loads.csv': (text) => text.replace('2.4 W ±8%', '3 W ±8%') }, ['power of lamps']],
  [
    'a load that is gone',
    {
      'loads.csv': (text) =>
        text
          .split('\n')
          .filter((line) => !line.startsWith('lamps'))
          .join('\n'),
    },
    ['load lamps'],
  ],
  ['a spread alone', { 'study.csv': (text) => text.replace('860 g ±25 g', '860 g ±80 g') }, ['feature.mass']],
  [
    'a choice',
    { 'study.csv': (text) => text.replace('carrier.activity,walk', 'carrier.activity,dance') },
    ['carrier.activity'],
  ],
  ['a comment and a note', { 'study.csv': (text) => text.replace('kitchen scale, with lamps', 'scale') }, []],
];

describe('what changed between two studies', () => {
  it.each(edits)('%s', (_, edit, names) => {
    const changes = studyChanges(earlier, studyFrom(smallStudy(edit)));
    expect(changes.map(({ name }) => name)).toEqual(names);
    for (const change of changes) expect(change.earlier).not.toBe(change.later);
  });

  it('is nothing for the same study with line ends of Windows', () => {
    const crlf = smallStudy().map(({ name, bytes }) => ({
      name,
      bytes: new TextEncoder().encode(textOf(bytes).replaceAll('\n', '\r\n')),
    }));
    expect(studyChanges(earlier, studyFrom(crlf))).toEqual([]);
  });

  it('put into the earlier study one after the other gives the results of the later', () => {
    const edit: Edit = {
      'study.csv': (text) =>
        text
          .replace('860 g ±25 g', '990 g ±25 g')
          .replace('P-2S-13,,', 'P-2S-22,,')
          .replace('carrier.activity,walk', 'carrier.activity,brisk')
          .replace('pack.carried,2', 'pack.carried,3'),
      'candidates.csv': (text) => text.replace('65 kg·cm', '58 kg·cm').replace('12 oz', '14 oz'),
      'loads.csv': (text) =>
        text
          .split('\n')
          .filter((line) => !line.startsWith('lamps'))
          .join('\n'),
      'criteria.csv': (text) =>
        text.replace(/^runtime,(\d+)/m, (_, weight) => `runtime,${Number(weight) + 3}`),
      'day.csv': (text) => text.replace(/^(pause),[^,]+/m, '$1,40 min'),
      'packs.csv': (text) => text.replace('2200 mAh', '2200 mAh ±1%'),
    };
    const later = studyFrom(smallStudy(edit));
    const changes = studyChanges(earlier, later);
    const reached = changes.reduce((study, change) => change.apply(study), earlier);
    expect(changes.map(({ name }) => name)).toContain('day, pause');
    const { together } = explainChanges(reached, later, [], { progress() {}, simulate: sketch });
    for (const { differences } of together)
      for (const [figure, difference] of Object.entries(differences))
        expect(Math.abs(difference ?? 0), figure).toBeLessThan(1e-9);
  });
});

describe('how much of the change each explains', () => {
  it('one change alone explains all of it', () => {
    const later = studyFrom(
      smallStudy({ 'study.csv': (text) => text.replace('860 g ±25 g', '990 g ±25 g') }),
    );
    const { singles, together } = explained(later, studyChanges(earlier, later));
    expect(singles.map(({ moves }) => moves)).toEqual([together]);
    const servo = together.find(({ candidate }) => candidate === 'servo-now')!;
    expect(servo.differences.runtime).toBeLessThan(-60);
  });

  it('a candidate’s own figure leaves the others as they are, and they are not computed again', () => {
    const later = studyFrom(smallStudy({ 'candidates.csv': (text) => text.replace('65 kg·cm', '58 kg·cm') }));
    const computed: string[] = [];
    const watched = (study: Study, candidate: Candidate) => {
      computed.push(candidate.id);
      return sketch(study, candidate);
    };
    const changes = studyChanges(earlier, later);
    const { singles } = explainChanges(earlier, later, changes, { progress() {}, simulate: watched });
    expect(computed.slice(4)).toEqual(['servo-now']);
    const worm = singles[0]!.moves.find(({ candidate }) => candidate === 'worm-driver')!;
    const { leads, ...own } = worm.differences;
    expect(new Set(Object.values(own))).toEqual(new Set([0]));
    expect(leads).not.toBe(0);
  });

  it('a weight moves the score and nothing else, and nothing is computed for it', () => {
    const later = studyFrom(
      smallStudy({
        'criteria.csv': (text) =>
          text.replace(/^runtime,(\d+)/m, (_, weight) => `runtime,${Number(weight) * 5}`),
      }),
    );
    const changes = studyChanges(earlier, later);
    expect(changes.map(({ name }) => name)).toEqual(['criterion runtime']);
    const { singles } = explained(later, changes);
    const servo = singles[0]!.moves.find(({ candidate }) => candidate === 'servo-now')!;
    expect(servo.differences.score).not.toBe(0);
    expect(servo.differences.runtime).toBe(0);
  });

  it('packs carried weigh on the body, and the mass of the feature does not', () => {
    const edit = (text: string) =>
      text.replace('860 g ±25 g', '990 g ±25 g').replace('pack.carried,2', 'pack.carried,3');
    const later = studyFrom(smallStudy({ 'study.csv': edit }));
    const { singles } = explained(later, studyChanges(earlier, later));
    const massOf = (name: string) =>
      singles.find(({ change }) => change.name === name)!.moves[0]!.differences['mass on the body'];
    expect(massOf('feature.mass')).toBe(0);
    expect(massOf('pack.carried')).toBeCloseTo(earlier.pack.massKg!, 9);
  });
});

describe('two records', () => {
  async function compared(edit: Edit, candidate: string | null = null): Promise<Comparison | null> {
    const archive = emptyFolder();
    const first = await decided(decideRequest(archive, smallStudy()));
    const second = await decided(
      decideRequest(archive, smallStudy(edit), {
        choose: 'servo-now',
        decision: 'keep',
        because: 'no time\u001b[2J\nthis year',
        date: '2026-06-01',
        supersedes: '2026-03-14-adopt-worm-driver',
      }),
    );
    const request = { templates: {}, version: '0.1.0', progress() {} };
    const result = compareRecords({ records: [first, second], candidate, ...request }, quickDisk);
    if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
    return result.value.comparison;
  }
  const edit: Edit = {
    'study.csv': (text) => text.replace('860 g ±25 g', '990 g ±25 g').replace('P-2S-13,,', 'P-2S-22,,'),
  };

  it('are told in 80 columns: each change, all together, the order, who leads', async () => {
    const comparison = (await compared(edit))!;
    const text = comparisonText(comparison, 80);
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(text).toMatch(/^ {2}feature\.mass: 860 g/m);
    expect(text).toMatch(/^ {2}pack\.choice: P-2S-13 → P-2S-22 +\+\d/m);
    expect(text).toMatch(/^ {2}all together/m);
    expect(text).not.toContain('was filed by version');
    expect(text).toMatch(/^Ranking then and now: worm-driver, servo-now$/m);
    expect(text).toContain('“no time this year”');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what must not appear
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
    const data = JSON.parse(JSON.stringify(comparisonData(comparison)));
    expect(data.changes.map(({ name }: { name: string }) => name)).toEqual(['feature.mass', 'pack.choice']);
    expect(data.changes[0].moves[0].differences).toHaveProperty('runtime');
  });

  it('with the same inputs have nothing that could move a figure', async () => {
    const text = comparisonText((await compared({}))!, 80);
    expect(text).toMatch(/nothing that could move a figure/);
    expect(text).toMatch(/worm-driver leads both: /);
  });

  it('that differ in a spread say what that does to the medians', async () => {
    const spread: Edit = { 'study.csv': (text) => text.replace('860 g ±25 g', '860 g ±5 g') };
    const comparison = (await compared(spread))!;
    // Where the line ends follows from the columns beside it.
    expect(comparisonText(comparison, 80).replace(/\s+/g, ' ')).toContain(
      'feature.mass: 860 g (835–885) → 860 g (855–865)',
    );
    const [{ moves }] = comparison.explained.singles as [ChangeEffect];
    expect(moves).toEqual(comparison.explained.together);
  });

  it('are told for another candidate on request, and a stranger is refused', async () => {
    expect((await compared(edit, 'worm-driver'))?.candidate?.id).toBe('worm-driver');
    expect(await compared(edit, 'worm-drive')).toBeNull();
  });

  it('of which one is missing are not compared', async () => {
    const first = await decided(decideRequest(emptyFolder(), smallStudy()));
    const request = { candidate: null, templates: {}, version: '0.1.0', progress() {} };
    const result = compareRecords({ records: [first, `${first}-x`], ...request }, quickDisk);
    expect([result.ok, result.issues.map(({ code }) => code)]).toEqual([false, ['unknown-record']]);
  });
});
