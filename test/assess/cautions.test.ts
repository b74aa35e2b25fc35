import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { Caution } from '../../src/assess/assessment.js';
import { approvalLine } from '../../src/assess/cautions/standing.js';
import type { OutcomeName } from '../../src/simulate/ensemble/ensemble.js';
import type { CandidateRun, NominalOutcome, PowerCutOutcome } from '../../src/simulate/outcome.js';
import type { Study } from '../../src/study/study.js';
import { plainCue } from '../simulate/plain-study.js';
import { columnsOf } from './certainty/drawn.js';
import { candidate, pack, run, study } from './hand-made.js';

type Changes = {
  nominal?: Partial<NominalOutcome>;
  run?: Partial<CandidateRun>;
  sheet?: Parameters<typeof candidate>[1];
  study?: Partial<Study>;
  /** Draws of some outcomes. */
  draws?: Partial<Record<OutcomeName, number[]>>;
};

function cautions(changes: Changes = {}): Caution[] {
  const one = candidate('a', changes.sheet);
  const context = { version: '0', inputHash: '', inputs: [], ...drawnContext(changes.draws) };
  return assess(study([one], [], changes.study), [run('a', changes.nominal, changes.run)], context).cautions;
}

function drawnContext(draws: Changes['draws']) {
  if (draws === undefined) return {};
  const figures = {
    runtimeP10S: 6000,
    holdEffortRatio: null,
    torqueMarginRatio: null,
    columns: columnsOf(10, draws),
  };
  return { drawn: new Map([['a', figures]]) };
}

/** Ten draws, so many of them with the first value. */
function tenDraws(count: number, past: number, other: number): number[] {
  return Array.from({ length: 10 }, (_, i) => (i < count ? past : other));
}

const raised = (code: string, changes: Changes) => cautions(changes).find((caution) => caution.code === code);

const falling: PowerCutOutcome = {
  stays: false,
  staysWhenShaken: false,
  fromPosition: 1,
  towards: 'lower',
  fallS: 0.6,
  tipSpeedMPerS: 2.5,
  largestTipSpeedMPerS: 2.6,
  impactEnergyJ: 1.2,
  tipForceN: 240,
};
const landing = {
  ...falling,
  decides: 'open' as const,
  shorted: { ...falling, fallS: 3, impactEnergyJ: 0.1 },
};

describe('cautions from the numbers', () => {
  it.each([
    ['no hold effort below a quarter of stall', 0.24, undefined],
    ['a caution above a quarter', 0.26, 'caution'],
    ['severe above two fifths', 0.41, 'severe'],
  ])('raise %s', (_, holdEffortRatio, severity) => {
    expect(raised('hold-effort', { nominal: { holdEffortRatio } })?.severity).toBe(severity);
  });

  it.each([
    ['no word of a drive that gives 1.3 times what it needs', 1.3, undefined, undefined],
    ['a caution where it gives less', 1.29, undefined, 'caution'],
    ['a severe one where it cannot hold its worst moment', 0.99, undefined, 'severe'],
    ['a severe one where half of the draws say so', 1.4, 0.98, 'severe'],
    ['a severe one where the figures as they stand say so', 0.98, 1.4, 'severe'],
  ])('raise %s, without any criteria', (_, torqueMarginRatio, drawn, severity) => {
    const one = candidate('a');
    const figures = {
      runtimeP10S: 0,
      holdEffortRatio: null,
      torqueMarginRatio: drawn ?? null,
      columns: columnsOf(10, {}),
    };
    const found = assess(study([one], []), [run('a', { torqueMarginRatio })], {
      ...{ version: '0', inputHash: '', inputs: [] },
      drawn: new Map([['a', figures]]),
    }).cautions.filter(({ code }) => ['too-weak', 'little-effort-left'].includes(code));
    expect(found.map((caution) => caution.severity)).toEqual(severity === undefined ? [] : [severity]);
  });

  it('take the stall figure of a listing for less than it says', () => {
    const nominal = { holdEffortRatio: 0.24 };
    expect(raised('hold-effort', { nominal, sheet: { figuresFrom: 'listing' } })?.severity).toBe('caution');
  });

  it('ask for the hold current where its two models differ and nobody has read it', () => {
    const nominal = { holdPackCurrentPulseModelA: 0.1, holdPackCurrentLinearRuleA: 0.4 };
    const measured: Study['measured'] = [{ quantity: 'hold_current', value: 0.3, halfWidth: 0.02, note: '' }];
    expect(raised('hold-current-uncertain', { nominal })?.figure).toBe('100 mA or 400 mA');
    const read = { nominal, study: { measured, baselineId: 'a' } };
    expect(raised('hold-current-uncertain', read)).toBeUndefined();
    expect(raised('hold-current-uncertain', { nominal, study: { measured, baselineId: 'b' } })).toBeDefined();
  });

  it('say nothing of hold effort where the hold needs no power', () => {
    expect(
      raised('hold-effort', { nominal: { holdEffortRatio: 0.5, holdCurrentUsed: 'unpowered' } }),
    ).toBeUndefined();
  });

  it.each([
    [64, undefined],
    [66, 'caution'],
    [141, 'severe'],
  ])('judge a crush force of %d N', (crushForceN, severity) => {
    expect(raised('crush', { nominal: { crushForceN } })?.severity).toBe(severity);
  });

  it('tell how a feature falls, with time, speed and energy, and what shorted leads would do', () => {
    const caution = raised('falls', { nominal: { powerCut: landing } });
    expect(caution).toMatchObject({ severity: 'severe', figure: '2.5 m/s, 1.2 J' });
    expect(caution?.text).toMatch(/after 0\.6 s, at 2\.5 m\/s, with 1\.2 J/);
    expect(caution?.text).toMatch(/shorted it would take 3 s/);
  });

  it('go by shorted leads where the drive shorts them itself', () => {
    const caution = raised('falls', { nominal: { powerCut: { ...landing, decides: 'shorted' } } });
    expect(caution?.text).toMatch(/after 3 s, .* with 0\.1 J/);
    expect(caution?.text).toMatch(/leads are shorted when off/);
  });

  it('tell when a drive gives way without falling freely', () => {
    const powerCut = { ...run('a').nominal.powerCut, stays: false };
    expect(raised('sinks', { nominal: { powerCut } })?.figure).toBe('does not hold');
  });

  it('tell that a drive which stays may creep when worn', () => {
    const powerCut = { ...run('a').nominal.powerCut, staysWhenShaken: false };
    expect(raised('creeps-when-shaken', { nominal: { powerCut } })?.severity).toBe('caution');
  });

  it('never call locking a brake', () => {
    expect(raised('locking-not-a-brake', { nominal: { locking: 'holds-when-shaken' } })?.severity).toBe(
      'note',
    );
    expect(raised('stays-by-friction', { nominal: { locking: 'does-not-hold' } })?.severity).toBe('note');
  });

  it.each([
    ['a worn case at 43 °C or more', 317, true, 'caution'],
    ['no worn case below', 315, true, undefined],
    ['no case at 45 °C that nobody wears', 318.15, false, undefined],
    ['a metal case of 66 °C, severe, worn or not', 339.15, false, 'severe'],
  ])('judge %s', (_, caseTemperatureK, worn, severity) => {
    const carrier = { worn, activity: 'walk', leanRad: 0, bodyMassKg: null } as const;
    expect(raised('hot-case', { nominal: { caseTemperatureK }, study: { carrier } })?.severity).toBe(
      severity,
    );
  });

  it.each([
    [0, undefined],
    [1, 'caution'],
    [4, 'caution'],
    [5, 'severe'],
  ])('with %d draws of ten past the winding limit are raised as %s', (count, severity) => {
    const draws = { windingTemperatureK: tenDraws(count, 400, 350) };
    const caution = raised('winding-hot', { nominal: { windingTemperatureK: 350 }, draws });
    expect(caution?.severity).toBe(severity);
    if (severity !== undefined) expect(caution?.text).toContain(`in ${count * 10} % of the draws`);
  });

  it('name no temperature that the drive would not live to see', () => {
    const winding = raised('winding-hot', { nominal: { windingTemperatureK: 758 } });
    expect(winding).toMatchObject({ severity: 'severe', figure: 'past 100 °C' });
    expect(winding?.text).not.toContain('485');
    const hot = raised('hot-case', { nominal: { caseTemperatureK: 758 } });
    expect(`${hot?.figure} ${hot?.text}`).not.toContain('485');
    expect(hot?.severity).toBe('severe');
  });

  it.each([
    [4, 'caution'],
    [5, 'severe'],
  ])('call a case that %d draws of ten find too hot to touch %s', (count, severity) => {
    const draws = { caseTemperatureK: tenDraws(count, 345, 300) };
    expect(raised('hot-case', { nominal: { caseTemperatureK: 300 }, draws })?.severity).toBe(severity);
  });

  it.each([
    [0, undefined, 'note'],
    [4, 'caution', undefined],
  ])('of a drive that stays but falls in %d draws of ten', (count, falls, stays) => {
    const draws = { fallS: tenDraws(count, 0.6, Number.NaN), fallEnergyJ: tenDraws(count, 0.3, Number.NaN) };
    expect(raised('may-fall', { draws })?.severity).toBe(falls);
    expect(raised('stays-by-friction', { draws })?.severity).toBe(stays);
    if (falls !== undefined) expect(raised('may-fall', { draws })?.figure).toBe('falls in 40 % of the draws');
  });

  it('call a fall severe that is hard in half of the draws', () => {
    const hard = (count: number) => ({
      fallS: tenDraws(10, 0.6, 0.6),
      fallEnergyJ: tenDraws(count, 1.2, 0.3),
    });
    expect(raised('may-fall', { draws: hard(5) })?.severity).toBe('severe');
    expect(raised('may-fall', { draws: hard(4) })?.severity).toBe('caution');
  });

  it('do not take gears that lock at rest for a lock where the feature is worn', () => {
    const nominal = { locking: 'holds-at-rest' } as const;
    expect(raised('stays-by-friction', { nominal })?.text).toMatch(/^Shaken as it is, its gears do not lock/);
    const carrier = { worn: false, activity: 'stand', leanRad: 0, bodyMassKg: null } as const;
    expect(raised('locking-not-a-brake', { nominal, study: { carrier } })).toBeDefined();
  });

  it.each([
    ['tell what a warm winding does', 350, ['slower-when-warm']],
    ['tell nothing of what a burnt one does', 657, []],
  ])('%s', (_, windingTemperatureK, codes) => {
    const message = 'With its winding warm a move can no longer be made.';
    const findings = [{ code: 'slower-when-warm', severity: 'note' as const, field: null, message }];
    const found = cautions({ nominal: { windingTemperatureK }, run: { findings } });
    expect(found.map(({ code }) => code).filter((code) => code.endsWith('-when-warm'))).toEqual(codes);
    expect(found.some(({ action }) => action.startsWith('Rehearse'))).toBe(codes.length > 0);
  });

  it('compare the time to the winding limit with the longest hold of the show', () => {
    const cue = (durationS: number) => plainCue({ fromPosition: 0.5, durationS });
    const show = { leadIn: [], loop: [cue(40), cue(30)] };
    const held = (timeToLimitHoldingS: number) =>
      raised('hold-time', { nominal: { timeToLimitHoldingS }, study: { show } });
    expect(held(60)?.severity).toBe('severe');
    expect(held(80)?.severity).toBe('caution');
  });

  it('call thermal runaway by its name', () => {
    const nominal = { thermalRunaway: true, timeToLimitHoldingS: 300, windingTemperatureK: null };
    expect(raised('thermal-runaway', { nominal })?.severity).toBe('severe');
  });

  it('tell when a drive runs longer than its rating allows', () => {
    const caution = raised('on-share', {
      nominal: { onShareFraction: 0.3 },
      sheet: { onShareFraction: 0.2, onPeriodS: 1200 },
    });
    expect(caution?.text).toMatch(/30 % of the time in its worst 20 min; 20 % are allowed/);
  });

  it.each([
    ['100 Wh and below may fly', 9, 'note', /under the 100 Wh/],
    ['up to 160 Wh with approval', 14, 'caution', /an airline must approve/],
    ['beyond that not at all', 16, 'caution', /not allowed/],
  ])('count watt-hours: %s', (_, capacityAh, severity, text) => {
    const caution = raised('watt-hours', { study: { pack: { ...pack, capacityC: capacityAh * 3600 } } });
    expect(caution).toMatchObject({ severity });
    expect(caution?.text).toMatch(text);
  });

  it('never leave a missing protection board or fuse unmentioned', () => {
    const wiring = { ...study([], []).wiring, fuseRatingA: null, protectionTripA: null };
    expect(raised('no-protection', { study: { wiring } })?.severity).toBe('severe');
    expect(raised('no-fuse', { study: { wiring } })?.severity).toBe('caution');
  });

  it('compare the start-up surge with what the board bears', () => {
    const demand = { peakCurrentA: 2, tenSecondCurrentA: 1, meanCurrentA: 0.5, startUpCurrentA: 12 };
    const wiring = { ...study([], []).wiring, protectionDelayS: 0.02 };
    // 12 A over a trip of 10 A for 3 × 15 ms: longer than 20 ms, shorter than 100 ms.
    expect(raised('start-up-trips', { run: { demand }, study: { wiring } })?.severity).toBe('severe');
    expect(raised('start-up-trips', { run: { demand } })).toBeUndefined();
  });

  it('come most severe first, the standing ones last, ending with whose word comes first', () => {
    const all = cautions({ nominal: { powerCut: landing, crushForceN: 70 } });
    const raisedOnes = all.filter((caution) => caution.figure !== '');
    const order = raisedOnes.map(({ severity }) => ['severe', 'caution', 'note'].indexOf(severity));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(all.at(-1)?.text).toBe(approvalLine);
    expect(all.every(({ text, action }) => text !== '' && action !== '')).toBe(true);
  });
});

describe('the order of cautions', () => {
  it('puts what burns a drive or hurts somebody before a board that is missing', () => {
    const plain = study([candidate('a'), candidate('b')], []);
    const unprotected = { ...plain, wiring: { ...plain.wiring, protectionTripA: null } };
    const hurting = { crushForceN: 200, powerCut: landing };
    const severe = assess(
      unprotected,
      [run('a', { torqueMarginRatio: 3, ...hurting }), run('b', { busVoltageV: 12.6, maximumVoltageV: 8.5 })],
      { version: '0', inputHash: '', inputs: [] },
    ).cautions.filter(({ severity }) => severity === 'severe');
    expect(severe.map(({ code }) => code)).toEqual(['voltage', 'falls', 'crush', 'no-protection']);
  });
});
