import type { CandidateAssessment } from '../../src/assess/assessment.js';
import type { DriveSheet, TypicalFigures } from '../../src/drives/sheet.js';
import type { Cue } from '../../src/study/show.js';
import type { Study } from '../../src/study/study.js';
import { createPack } from './fixture-pack.js';
import { createProvenance } from './fixture-provenance.js';

const cues: [name: string, action: Cue['action'], to: number, seconds: number][] = [
  ['wake', 'move', 22, 3.5],
  ['look round', 'hold', 22, 20],
  ['rise', 'move', 56, 2.8],
  ['stand tall', 'hold', 56, 38],
  ['dip', 'move', 8, 2.4],
  ['fish', 'hold', 8, 9],
  ['snap up', 'move', 34, 1.4],
  ['stride', 'hold', 34, 46],
  ['fold', 'move', -40, 4.5],
  ['sleep', 'rest', -40, 40],
];

function createLoop(): Cue[] {
  let from = -40;
  return cues.map(([name, action, to, durationS], index) => {
    const cue: Cue = {
      name,
      action,
      fromPosition: (from * Math.PI) / 180,
      toPosition: (to * Math.PI) / 180,
      durationS,
      law: 'poly-345',
      lightsFraction: 0.8,
      note: '',
      line: index + 2,
    };
    from = to;
    return cue;
  });
}

/** A checked study around the candidates; only what the report shows is filled with care. */
export function createStudy(candidates: CandidateAssessment[]): Study {
  const pack = createPack();
  return {
    about: {
      question: "Should the heron's neck keep its servo, or change to a drive that holds without current?",
      project: 'Lantern heron on a backpack harness',
      preparedBy: 'two makers at a kitchen table',
      preparedFor: "the lantern group's next work evening",
      date: '2026-03-14',
      currency: 'EUR',
    },
    feature: {
      kind: 'hinge',
      featureCount: 1,
      massKg: 0.86,
      balanceDistanceM: 0.265,
      tipDistanceM: 0.71,
      tipScaleKg: null,
      inertiaKgM2: null,
      shape: 'unknown',
      panelAreaM2: 0.028,
      lowerStopPosition: -0.698,
      upperStopPosition: 1.187,
      inclineRad: 0,
      axisTiltRad: 0,
      frictionEffort: 0.06,
      latchPosition: null,
      spring: {
        form: 'none',
        stiffness: 0,
        freePosition: 0,
        constantEffort: 0,
        rateNPerM: 0,
        frameArmM: 0,
        featureArmM: 0,
        freeLengthM: 0,
      },
    },
    carrier: { worn: true, activity: 'walk', leanRad: 0.05, bodyMassKg: 70 },
    air: { gustMPerS: 5, temperatureK: 287.15, buried: false },
    space: { lengthM: 0.26, widthM: 0.1, heightM: 0.07 },
    wiring: {
      lengthM: 0.7,
      areaM2: 5.2e-7,
      switchResistanceOhm: 0.012,
      connectorResistanceOhm: 0.002,
      fuseRatingA: 7.5,
      protectionTripA: 12,
      protectionDelayS: 0.02,
      controllerMinimumV: 5.5,
    },
    packs: [pack],
    pack,
    packsCarriedCount: 2,
    packTemperatureK: 289.15,
    loads: [],
    show: { leadIn: [], loop: createLoop() },
    candidates: candidates.map(({ id, label, type }, index) => ({
      id,
      kind: type,
      label,
      sheet: { source: `invented listing ${index + 1}`, sourceDate: '2026-02-05', note: '' } as DriveSheet,
      typical: {} as TypicalFigures,
      extra: {},
      line: index + 2,
      file: 'candidates.csv',
    })),
    baselineId: 'servo-now',
    targetRuntimeS: 7200,
    eventsPerYearCount: 5,
    hourPriceMoney: 12,
    criteria: [],
    day: [],
    measured: [],
    drawsCount: 0,
    seed: 1,
    provenance: createProvenance(candidates.map((candidate) => candidate.id)),
  };
}
