import { describe, expect, it } from 'vitest';
import type { CandidateAssessment } from '../../../src/assess/assessment.js';
import type { Band } from '../../../src/assess/certainty.js';
import { safetyFigures } from '../../../src/assess/safety/safety-figures.js';
import type { OutcomeName } from '../../../src/simulate/ensemble/ensemble.js';
import type { NominalOutcome } from '../../../src/simulate/outcome.js';
import { createAssessment } from '../../report/fixture.js';

const motion = { showSpeedMPerS: 0.5, freeSpeedMPerS: 3, tipMassKg: 0.16, crushDistanceM: 0.07 };
const band = (p10: number, p90: number, occursFraction = 1): Band => ({
  ...{ p10, median: (p10 + p90) / 2, p90 },
  occursFraction,
});

/** Figures of the servo that is built today, with other nominal figures and bands. */
function figuresOf(
  nominal: Partial<NominalOutcome> = {},
  uncertain: Partial<Record<OutcomeName, Band>> = {},
  id = 'servo-now',
) {
  const assessment = createAssessment();
  const found = assessment.candidates.find((one) => one.id === id)!;
  const candidate: CandidateAssessment = { ...found, nominal: { ...found.nominal, ...nominal }, uncertain };
  return safetyFigures(assessment, candidate, motion);
}

const stays = {
  ...{ stays: true, staysWhenShaken: true, fallS: null, tipSpeedMPerS: null, largestTipSpeedMPerS: null },
  ...{ fromPosition: 1, towards: 'lower' as const, impactEnergyJ: null, tipForceN: null },
};
const staying: NominalOutcome['powerCut'] = { ...stays, decides: 'open', shorted: stays };

describe('a cautious figure', () => {
  it('is the worse end of the draws', () => {
    const found = figuresOf(
      {},
      { crushForceN: band(60, 130), caseTemperatureK: band(300, 350), featureMassKg: band(0.8, 0.9) },
    );
    expect([found.crush.forceN, found.heat.caseTemperatureK, found.movingMassKg]).toEqual([130, 350, 0.9]);
  });

  it('is the nominal one where the draws lie below it, and where there are none', () => {
    expect(figuresOf({}, { crushForceN: band(40, 80) }).crush.forceN).toBe(90);
    expect(figuresOf().crush.forceN).toBe(90);
    expect([figuresOf().isCautious, figuresOf({}, { crushForceN: band(40, 80) }).isCautious]).toEqual([
      false,
      true,
    ]);
  });

  it('at the tip keeps the ratio of the two distances', () => {
    expect(figuresOf({}, { crushForceN: band(60, 180) }).crush.tipForceN).toBeCloseTo(18, 12);
  });
});

describe('a power cut', () => {
  it('falls in the shortest time, with the fastest tip', () => {
    const bands = { fallS: band(0.5, 0.9), tipSpeedMPerS: band(2, 5), fallEnergyJ: band(0.3, 1.9) };
    const { powerCut } = figuresOf({}, bands);
    expect([powerCut.answer, powerCut.fallS, powerCut.tipSpeedMPerS]).toEqual(['falls', 0.5, 5]);
    expect(powerCut.energyJ).toBeCloseTo(0.5 * 0.16 * 25, 12);
  });

  it('may fall where only some draws do, and then by the draws that fall alone', () => {
    const bands = { fallS: band(0.6, 0.9, 0.04), tipSpeedMPerS: band(2, 4, 0.04), fallEnergyJ: band(0, 0) };
    const { powerCut } = figuresOf({ powerCut: staying }, bands);
    expect([powerCut.answer, powerCut.fallProbability, powerCut.fallS]).toEqual(['may-fall', 0.04, 0.6]);
    expect(powerCut.energyJ).toBeCloseTo(0.5 * 0.16 * 16, 12);
  });

  it('stays where no draw falls, and has no time and no speed', () => {
    const { powerCut } = figuresOf({ powerCut: staying }, { crushForceN: band(60, 130) });
    expect(powerCut).toMatchObject({ answer: 'stays', fallProbability: 0, fallS: null, energyJ: null });
  });

  it('sinks where friction lets it give way without a fall', () => {
    const sinking = { ...stays, stays: false, staysWhenShaken: false };
    const { powerCut } = figuresOf({ powerCut: { ...sinking, decides: 'open', shorted: stays } });
    expect([powerCut.answer, powerCut.open.does, powerCut.shorted.does]).toEqual(['sinks', 'sinks', 'stays']);
  });

  it('by the state of the leads that is the drive’s own', () => {
    const { powerCut: own } = createAssessment().candidates.find(({ id }) => id === 'servo-now')!.nominal;
    const { powerCut } = figuresOf({ powerCut: { ...own, decides: 'shorted', shorted: stays } });
    expect([powerCut.answer, powerCut.open.does, powerCut.decides]).toEqual(['stays', 'falls', 'shorted']);
  });
});

describe('the rest of the sheet', () => {
  it('counts the packs that are carried', () => {
    const { energyJ, carriedCount, carriedEnergyJ } = figuresOf().pack;
    expect(carriedEnergyJ).toBe(energyJ * carriedCount);
    expect(energyJ / 3600).toBeGreaterThan(1);
  });

  it('keeps the cautions about this candidate and the whole feature, but those about minutes and airlines', () => {
    const codes = figuresOf().cautions.map(({ code, candidate }) => `${candidate} ${code}`);
    expect(codes).toContain('servo-now falls');
    expect(codes.filter((code) => /worm|screw|watt-hours|codes-first/.test(code))).toEqual([]);
  });

  it('says whether the drive is the one that is built', () => {
    expect([figuresOf().isBuilt, figuresOf({}, {}, 'worm-relay').isBuilt]).toEqual([true, false]);
  });
});
