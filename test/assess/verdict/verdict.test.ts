import { describe, expect, it } from 'vitest';
import type { CandidateAssessment } from '../../../src/assess/assessment.js';
import { verdictOf } from '../../../src/assess/verdict/verdict.js';
import { contestOf } from '../../../src/assess/verdict/verdict-parts.js';
import type { Study } from '../../../src/study/study.js';
import { change, parts, reading } from './parts.js';

const better = { leads: 0.85 };
const today = { leads: 0.15 };
const kindOf = (...of: Parameters<typeof parts>) => verdictOf(parts(...of)).kind;

describe('the verdict, in its order', () => {
  it('(1) where nothing passes it is none of these, unless one passes in half of the draws', () => {
    const fails = { passes: false, leads: 0.15 } as const;
    expect(kindOf({ ...fails, passing: 0 }, { ...better, passes: false, passing: 0.49 })).toBe(
      'none of these',
    );
    const hopeful = verdictOf(parts({ ...fails, passing: 0 }, { ...better, passes: false, passing: 0.5 }));
    expect(hopeful).toMatchObject({ kind: 'redesign', leader: 'worm', confidence: { probability: 0.5 } });
    expect(kindOf({ ...fails, passing: 0.6 }, { ...better, passes: false, passing: 0.1 })).toBe('keep');
  });

  it('(1) what passes on its figures only is none of these, unless a lesser change likely passes', () => {
    const failing = { passes: false, passing: 0, leads: 0.37 };
    const onPaper = { passes: true, passing: 0.04, leads: 0.63 };
    const found = verdictOf(parts(failing, onPaper));
    expect(found).toMatchObject({ kind: 'none of these', leader: null, confidence: { probability: 0.96 } });
    expect(found.sentence).toBe(
      'None of these: no candidate passes every limit in half of the draws, and worm, the nearest, passes in 4 % of the draws.',
    );
    expect(kindOf({ ...failing, passing: 0.1, passes: true }, onPaper)).toBe('none of these');
    expect(kindOf(failing, { ...onPaper, passing: 0.5 })).toBe('keep');
    const likely = { changes: [change('A spring', 9, 0.1, { passProbability: 0.5 })] };
    expect(kindOf(failing, onPaper, likely)).toBe('keep with a lesser change');
    const unlikely = { changes: [change('A spring', 9, 0.1, { passProbability: 0.49 })] };
    expect(kindOf(failing, onPaper, unlikely)).toBe('none of these');
  });

  it('(1) where nothing else passes, takes the change that does: a sure one with the least work, else the surest', () => {
    const fails = { passes: false, passing: 0, leads: 0.5 };
    const taken = (...changes: ReturnType<typeof change>[]) => verdictOf(parts(fails, fails, { changes }));
    const spring = change('A spring', 4, 0, { passProbability: 0.99 });
    const packs = change('Two packs', 2, 0, { passProbability: 0.85 });
    expect(taken(spring, packs).sentence).toMatch(
      /^Keep now, with one change: two packs; .* in 85 % of the draws/,
    );
    const lights = change('Dimmer lights', 1, 0, { passProbability: 0.6 });
    expect(taken(lights, packs).sentence).toMatch(/two packs/);
    const { kind, confidence, reasons } = taken(lights);
    expect({ kind, word: confidence.word }).toEqual({ kind: 'keep with a lesser change', word: 'open' });
    // Who leads among those that fail is no reason for anything.
    expect(reasons.join(' ')).not.toContain('leads in');
    expect(taken(change('A latch', 1, 0, { passes: false, passProbability: 0.9 })).kind).toBe(
      'none of these',
    );
  });

  it('(1) never advises a drive that breaks a limit in most draws where another passes', () => {
    const found = verdictOf(parts({ leads: 0.45, passing: 0.9 }, { leads: 0.55, passing: 0.17 }));
    expect(found).toMatchObject({ kind: 'keep', leader: 'now' });
  });

  it('asks how the drive of today is fed where a blank alone rules it out', () => {
    const of = parts({ passes: false, passing: 0, leads: 0 }, { leads: 1 });
    const limits = [{ criterion: 'voltage', passes: false }] as CandidateAssessment['limits'];
    const baseline = { ...of.baseline!, limits };
    const provenance = [{ path: 'candidates.now.sheet.supply', origin: 'assumed' }] as Study['provenance'];
    const asked = { ...of, baseline, study: { ...of.study, provenance } };
    expect(verdictOf(asked)).toMatchObject({ kind: 'measure first', confidence: { word: 'open' } });
    expect(verdictOf({ ...asked, study: { ...of.study, provenance: [] } }).kind).toBe('redesign');
  });

  it('(4) asks none to pay where nothing says how long a show lasts', () => {
    const of = parts(today, better, { events: null });
    const endless = { ...of.study, targetRuntimeS: null, day: [] };
    expect(verdictOf({ ...of, study: { ...endless, targetRuntimeS: 3600 } }).kind).toBe('keep');
    expect(verdictOf({ ...of, study: endless }).kind).toBe('redesign');
  });

  it('leaves the choice between equals to the rank', () => {
    // 51 of 100 draws against 49 are no difference: one standard error is five draws.
    expect(verdictOf(parts(null, { leads: 1 })).leader).toBe('worm');
    expect(verdictOf(parts({ leads: 0.49 }, { leads: 0.51 })).leader).toBe('now');
  });

  it('(1) comes before what is worth measuring', () => {
    const measurables = [reading(0.3)];
    const fails = { passes: false, passing: 0, leads: 0 };
    expect(kindOf(fails, { ...fails, leads: 1 }, { measurables })).toBe('none of these');
  });

  it('a missing figure never makes it none of these: it is to be filled in first', () => {
    const { kind, sentence, confidence } = verdictOf(
      parts({ passes: false, passing: 0, leads: 0 }, { passes: null, passing: null, leads: 1 }),
    );
    expect(kind).toBe('measure first');
    expect(sentence).toMatch(/^Fill in what is missing first/);
    expect(confidence).toMatchObject({ probability: null, word: 'open' });
  });

  it('(2) measures first what is worth a fiftieth of the score and can be measured', () => {
    expect(kindOf(today, better, { measurables: [reading(0.02)] })).toBe('measure first');
    expect(kindOf(today, better, { measurables: [reading(0.019)] })).toBe('redesign');
    expect(kindOf(today, better, { measurables: [reading(0.5, false)] })).toBe('redesign');
  });

  it('(2) comes before lesser changes', () => {
    const changes = [change('A spring', 2, 0.9)];
    expect(kindOf(today, better, { measurables: [reading(0.1)], changes })).toBe('measure first');
  });

  it('(3) keeps with a lesser change that reaches seven tenths of the gain in half of the hours', () => {
    const withThese = (...changes: ReturnType<typeof change>[]) =>
      verdictOf(parts(today, better, { changes }));
    expect(withThese(change('A spring', 5, 0.7))).toMatchObject({
      kind: 'keep with a lesser change',
      leader: 'now',
      change: ['assist-spring'],
      confidence: { probability: 0.95, word: 'clear' },
    });
    expect(withThese(change('A spring', 5, 0.69)).kind).toBe('redesign');
    expect(withThese(change('A spring', 5.1, 0.9)).kind).toBe('redesign');
    expect(withThese(change('A spring', 5, 0.9, { passes: false })).kind).toBe('redesign');
    expect(withThese(change('A spring', 5, 0.9, { passProbability: 0.79 })).kind).toBe('redesign');
  });

  it('(3) takes the change with the least work', () => {
    const changes = [change('A spring', 4, 1.4), change('Two packs', 2, 0.8), change('A latch', 2, 0.75)];
    expect(verdictOf(parts(today, better, { changes })).sentence).toMatch(
      /^Keep now, with one change: two packs; it gains 80 % of the score that worm would, for 2 h of work instead of 10 h\.$/,
    );
  });

  it('(3) says so in words where the change gains as much as the leader, or more', () => {
    const sentenceWith = (ratio: number) =>
      verdictOf(parts(today, better, { changes: [change('Two packs', 2, ratio)] })).sentence;
    expect(sentenceWith(1.01)).toContain('two packs; it gains as much as worm would, for 2 h');
    expect(sentenceWith(1.66)).toContain('two packs; it gains 1.7 times the score that worm would, for 2 h');
  });

  it('(4) changes where the leader is likely better and pays within ten events', () => {
    expect(kindOf({ leads: 0.25 }, { leads: 0.75 }, { events: 10 })).toBe('redesign');
    expect(kindOf({ leads: 0.26 }, { leads: 0.74 }, { events: 10 })).toBe('keep');
    expect(kindOf(today, better, { events: 11 })).toBe('keep');
    expect(kindOf(today, better, { events: null })).toBe('keep');
  });

  it('(4) asks for no return where an hour has no price, or where the present drive is ruled out', () => {
    expect(kindOf(today, better, { events: null, hourPrice: 0 })).toBe('redesign');
    expect(kindOf({ ...today, passes: false, passing: 0 }, better, { events: null })).toBe('redesign');
  });

  it('(5) else keeps, and says whether for want of sureness, of money, or because nothing is better', () => {
    expect(verdictOf(parts({ leads: 0.3 }, { leads: 0.7 })).sentence).toMatch(
      /^Keep now: worm beats it in no more than 70 % of the draws/,
    );
    const poor = verdictOf(parts(today, better, { events: 58, pays: 0.02 }));
    expect(poor.sentence).toBe(
      'Keep now: worm beats it in 85 % of the draws but pays for itself only after 58 events.',
    );
    expect(poor.confidence).toMatchObject({ probability: 0.98, word: 'clear' });
    expect(verdictOf(parts({ leads: 0.9 }, { leads: 0.1 })).sentence).toBe(
      'Keep now: it leads in 90 % of the draws.',
    );
  });

  it('chooses where there is no drive of today', () => {
    expect(verdictOf(parts(null, { leads: 0.8 }))).toMatchObject({ kind: 'choose', leader: 'worm' });
    expect(kindOf(null, { passes: false, passing: 0.6, leads: 1 })).toBe('choose');
    expect(kindOf(null, { passes: false, passing: 0.2, leads: 1 })).toBe('none of these');
  });
});

describe('what the verdict is made of', () => {
  it('says first that nobody is clearly ahead where the leader is tied, and in the reasons of how many draws', () => {
    const { sentence, reasons } = verdictOf(
      parts({ leads: 0.55 }, { leads: 0.45 }, { ties: [['now', 'worm']] }),
    );
    expect(sentence).toBe('Keep now: nobody is clearly ahead; it leads in 55 % of the draws, worm in 45 %.');
    expect(reasons[0]).toBe(
      'now leads in 55 % of the draws, worm in 45 %. One against one it is ahead of worm in 55 %: too close to call.',
    );
    expect(verdictOf(parts(null, { leads: 0.8 })).sentence).not.toContain('clearly ahead');
  });

  it('its leader is who leads in the draws, even where another is first on its figures', () => {
    const { leader, reasons } = verdictOf(parts({ leads: 0.9 }, { leads: 0.1 }));
    expect(leader).toBe('now');
    expect(reasons.join(' ')).not.toMatch(/as it stands/);
    const other = parts({ leads: 0.1, passes: false, passing: 0.9 }, { leads: 0.8 });
    expect(verdictOf(other).leader).toBe('worm');
  });

  it('reasons are sentences with medians and ranges', () => {
    const { reasons } = verdictOf(parts(today, better));
    expect(reasons).toContain(
      'One pack lasts 60 min (50–80 min) with worm, 60 min (50–80 min) with now; 60 min would be enough.',
    );
    expect(reasons.every((reason) => /^[A-Za-z].*\.$/.test(reason))).toBe(true);
  });

  it('a pass that is not sure names how often', () => {
    expect(verdictOf(parts({ ...today, passing: 0.42 }, better)).reasons.join('\n')).toMatch(
      /now passes every limit in 42 % of the draws\./,
    );
  });

  it('is overturned by inputs at whose ends the other one is ahead, and by a reading', () => {
    const { overturnedBy } = verdictOf(parts(today, better, { measurables: [reading(0.01)] }));
    expect(overturnedBy[0]).toBe(
      'Where the feature mass is 800 g or less, worm is ahead of now in only 10 % of the draws.',
    );
    expect(overturnedBy[1]).toBe('Measuring the feature mass would change the choice in 10 % of the draws.');
    expect(overturnedBy).toHaveLength(2);
  });

  it('flips are told where the draws have the same leader as the figures', () => {
    const flip = {
      path: 'feature.massKg',
      field: 'feature.mass',
      owner: null,
      label: 'feature mass',
      value: 0.7,
      shown: '700 g',
      nominal: 0.86,
      nominalShown: '860 g',
      leaderBeyond: 'now',
      beyondProbability: 0.12,
    };
    const sensitivity = {
      leader: 'worm',
      against: 'now',
      swings: [],
      flips: [flip],
      totalEffects: [],
      measureFirst: [],
      weightChange: null,
    };
    expect(verdictOf(parts(today, better, { sensitivity })).overturnedBy).toEqual([
      'If the feature mass is 700 g or less instead of 860 g, now leads; this holds in 12 % of the draws.',
    ]);
    expect(verdictOf(parts({ leads: 0.9 }, { leads: 0.1 }, { sensitivity })).overturnedBy).toEqual([]);
  });
});

describe('whom the leader is compared with', () => {
  const contest = (now: Parameters<typeof parts>[0], worm: Parameters<typeof parts>[1], spare: boolean) => {
    const { ranked, certainty, leader, baseline } = parts(now, worm);
    const third = { ...ranked.find(({ id }) => id === 'worm')!, id: 'spool' };
    const candidates = {
      ...certainty.candidates,
      spool: { ...certainty.candidates.worm!, leadProbability: 0.2 },
    };
    return contestOf(spare ? [...ranked, third] : ranked, { candidates }, leader, baseline);
  };
  const ruledOut = { passes: false, passing: 0.1, leads: 0 };

  it('is the drive of today as long as no limit rules it out', () => {
    expect(contest({ leads: 0.1 }, { leads: 0.7 }, true)).toEqual(['worm', 'now']);
    expect(contest({ ...ruledOut, passing: 0.6 }, { leads: 0.7 }, true)).toEqual(['worm', 'now']);
  });

  it('is the best of those that pass where one does', () => {
    expect(contest(ruledOut, { leads: 0.8 }, true)).toEqual(['worm', 'spool']);
    expect(contest(ruledOut, { leads: 0.8 }, false)).toEqual(['worm', 'now']);
  });
});
