import { describe, expect, it } from 'vitest';
import { edited, goodFiles, historyOf, issuesIn, readFiles, studyIn } from './good-study.js';

const degrees = (value: number) => (value * Math.PI) / 180;
const study = studyIn(goodFiles);

describe('the least study', () => {
  it('reads without a word', () => expect(issuesIn(goodFiles)).toEqual([]));

  it('is in SI', () => {
    expect(study.feature).toMatchObject({
      kind: 'hinge',
      massKg: 0.5,
      balanceDistanceM: 0.2,
      tipDistanceM: 0.5,
      lowerStopPosition: degrees(-30),
      upperStopPosition: degrees(60),
    });
    expect(study.targetRuntimeS).toBe(5400);
    expect(study.pack).toBe(study.packs[0]);
    expect(study.pack).toMatchObject({ seriesCount: 2, capacityC: 7920, massKg: 0.12 });
    const [servo, worm, screw] = study.candidates;
    expect(servo!.sheet.stallEffort).toBeCloseTo(35 * 0.0980665, 12);
    expect(servo!.sheet.noLoadSpeed).toBeCloseTo(degrees(60) / 0.2, 12);
    expect(worm!.sheet.noLoadSpeed).toBeCloseTo((15 * 2 * Math.PI) / 60, 12);
    expect(screw!.sheet).toMatchObject({
      noLoadSpeed: 0.02,
      stallEffort: 200,
      strokeM: 0.1,
      coupling: 'strut',
    });
  });

  it('takes what is blank from the assumptions', () => {
    expect(study.carrier).toEqual({ worn: true, activity: 'walk', leanRad: 0, bodyMassKg: null });
    expect(study.air).toEqual({ gustMPerS: 0, temperatureK: 298.15, buried: false });
    expect(study.wiring).toMatchObject({
      lengthM: 0.5,
      switchResistanceOhm: 0.01,
      connectorResistanceOhm: 0.002,
      fuseRatingA: null,
    });
    // ASTM B258, from memory: 18 AWG has 0.823 mm².
    expect(study.wiring.areaM2 * 1e6).toBeCloseTo(0.823, 3);
    expect(study).toMatchObject({
      packsCarriedCount: 1,
      packTemperatureK: 298.15,
      eventsPerYearCount: 4,
      hourPriceMoney: 0,
      drawsCount: 2048,
      seed: 1,
    });
    expect(study.pack).toMatchObject({
      parallelCount: 1,
      reserveFraction: 0.2,
      agedToFraction: 1,
      cutOffVoltageV: 3.3,
      chargeRatePerH: 1,
      figuresFrom: 'listing',
    });
    expect(study.pack.warningVoltageV).toBeCloseTo(3.5, 12);
    expect(study.pack.chemistry).toMatchObject({
      id: 'lipo',
      fullVoltageV: 4.2,
      nominalVoltageV: 3.7,
      floorVoltageV: 3,
    });
  });

  it('gives each drive type its own defaults', () => {
    const [servo, worm, screw] = study.candidates.map(({ sheet }) => sheet);
    expect(servo).toMatchObject({
      idleCurrentA: 0.01,
      control: 'position',
      positionFeedback: true,
      poweredAtHold: true,
      pulseFrequencyHz: 2000,
      coupling: 'direct',
    });
    expect(worm).toMatchObject({
      idleCurrentA: 0,
      control: 'switched',
      positionFeedback: null,
      poweredAtHold: false,
      pulseFrequencyHz: 20000,
    });
    expect(servo!.maximumVoltageV).toBeCloseTo(7.4 * 1.15, 12);
    expect(worm!.maximumVoltageV).toBeCloseTo(15, 12);
    expect(screw).toMatchObject({
      onShareFraction: 0.2,
      onPeriodS: 1200,
      strutSide: 'push',
      strutFrameArmM: null,
    });
    expect(worm!.onShareFraction).toBeNull();
    expect(study.candidates[1]!.typical).toMatchObject({
      forwardEfficiency: 0.35,
      noLoadCurrentRatio: 0.08,
      staticFrictionRatio: 1.25,
      holdFrictionFraction: 0.15,
    });
  });

  it('leaves to physics what follows from physics', () => {
    for (const { sheet } of study.candidates) {
      expect(sheet.noLoadCurrentA).toBeNull();
      expect(sheet.caseToAirKPerW).toBeNull();
      expect(sheet.windingHeatCapacityJPerK).toBeNull();
    }
  });

  it('never lets a candidate lead by a blank', () => {
    const [servo, worm, screw] = study.candidates.map(({ sheet }) => sheet);
    expect(servo).toMatchObject({
      electronicsMassKg: 0,
      extraCostMoney: 0,
      reworkTimeS: 0,
      priceMoney: null,
    });
    expect(worm!.electronicsMassKg).toBeCloseTo(0.025, 12);
    expect(worm!.extraCostMoney).toBeCloseTo(15, 12);
    expect(worm!.reworkTimeS).toBeCloseTo(8 * 3600, 8);
    expect(screw!.reworkTimeS).toBeCloseTo(12 * 3600, 8);
    const withoutMass = studyIn(edited('candidates.csv', ',,2.4 A,,260 g', ',,2.4 A,,'));
    expect(withoutMass.candidates[1]!.sheet.massKg).toBeNull();
  });

  it('has default criteria whose scales do not depend on the candidates', () => {
    expect(study.criteria.map(({ id, weightScore }) => [id, weightScore])).toEqual([
      ['runtime', 4],
      ['body_mass', 2],
      ['cue_fidelity', 2],
      ['cost', 1],
      ['rework_hours', 2],
      ['fall_energy', 1],
      ['fits', 0],
      ['voltage', 0],
      ['torque_margin', 0],
    ]);
    expect(study.criteria[0]).toMatchObject({ worthless: 2700, worthFull: 8100, origin: 'assumed' });
    expect(study.criteria[0]!.note).toContain('worth 0 at 45 min, 1 at 135 min');
    const fidelity = study.criteria.find(({ id }) => id === 'cue_fidelity')!;
    expect(fidelity.must).toEqual({ direction: 'at-least', bound: 0.2 });
    expect(study.criteria.at(-1)!.must).toEqual({ direction: 'at-least', bound: 1.3 });
    const free = studyIn(edited('study.csv', 'target.runtime,90,,\n', ''));
    expect(free.criteria[0]).toMatchObject({ worthless: 0, worthFull: 7200 });
  });

  it('counts what is given and what is assumed', () => {
    const numbers = study.provenance.filter(({ value }) => typeof value === 'number');
    expect(numbers.filter(({ origin }) => origin === 'given')).toHaveLength(6 + 3 + (5 + 5 + 6));
    expect(numbers.filter(({ origin }) => origin === 'assumed').length).toBeGreaterThan(40);
  });
});

describe('all problems of all files', () => {
  it('are told in one run, in file order', () => {
    const files = {
      ...goodFiles,
      'study.csv': (goodFiles['study.csv'] as string).replace('500 g', '500').replace('pack-a', 'pack-z'),
      'candidates.csv': (goodFiles['candidates.csv'] as string)
        .replace('35 kg·cm', '35 oz')
        .replace('1.8 A', '1.8 Ah'),
      'show.csv': (goodFiles['show.csv'] as string)
        .replace('sleep,rest', 'sleep,nap')
        .replace('show,hold,', 'show,hold,20'),
      'packs.csv': (goodFiles['packs.csv'] as string).replace('lipo', 'lead'),
      'measured.csv': 'quantity,value\nruntime,long\n',
      'criteria.csv': 'criterion,weight\nruntimes,4\ncost,1\n',
    };
    const { ok, issues } = readFiles(files, ['worm-a.mass=heavy']);
    expect(ok).toBe(false);
    expect(issues.map(({ file, line, code }) => [file, line, code])).toEqual([
      ['study.csv', 4, 'missing-unit'],
      ['study.csv', 10, 'unknown-reference'],
      ['candidates.csv', 2, 'unit-of-another-dimension'],
      ['candidates.csv', 4, 'unit-of-another-dimension'],
      ['show.csv', 3, 'cue-jumps'],
      ['show.csv', 5, 'unknown-choice'],
      ['packs.csv', 2, 'unknown-choice'],
      ['criteria.csv', 2, 'unknown-choice'],
      ['measured.csv', 2, 'not-a-number'],
      ['--set', null, 'not-a-number'],
    ]);
  });
});

describe('changes', () => {
  it('go through the same reading as the files', () => {
    const changed = studyIn(goodFiles, [
      'feature.mass=420 g',
      'worm-a.mass = 0.3 kg ±5 g',
      'pack-a.capacity=3 Ah',
      { item: 'carrier.worn', value: 'no' },
    ]);
    expect(changed.feature.massKg).toBeCloseTo(0.42, 12);
    expect(changed.candidates[1]!.sheet.massKg).toBe(0.3);
    expect(changed.pack.capacityC).toBe(10800);
    expect(changed.carrier).toMatchObject({ worn: false, activity: 'stand' });
    expect(historyOf(changed, 'feature.massKg').place).toEqual({
      file: '--set',
      line: null,
      column: 'feature.mass',
    });
  });

  it('may be blank, which takes the assumption again', () => {
    expect(
      studyIn(edited('study.csv', 'worn,yes,,', 'worn,yes,,\nair.gust,3 m/s,,'), ['air.gust=']).air.gustMPerS,
    ).toBe(0);
  });
});
