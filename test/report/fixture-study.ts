import type { CandidateAssessment } from '../../src/assess/assessment.js';
import type { DriveSheet } from '../../src/drives/sheet.js';
import type { Criterion } from '../../src/study/choosing.js';
import type { Cue } from '../../src/study/show.js';
import type { Study } from '../../src/study/study.js';
import { plainSheet, plainTypical } from '../simulate/plain-study.js';
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

function criterion(id: Criterion['id'], weightScore: number, must: Criterion['must']): Criterion {
  return { id, weightScore, worthless: 0, worthFull: 1, must, origin: 'given', note: '' };
}

/** What the kinds differ in; figures of no drive there is. */
const sheets: Record<CandidateAssessment['type'], Partial<DriveSheet>> = {
  'position-servo': {
    ...{ noLoadSpeed: 4.36, noLoadCurrentA: 0.3, stallEffort: 6.37, stallCurrentA: 5.8 },
    ...{ massKg: 0.158, mountMassKg: 0.07, lengthM: 0.066, widthM: 0.03, heightM: 0.058 },
  },
  'worm-gearmotor': {
    ...{ ratedVoltageV: 12, noLoadSpeed: 1.9, noLoadCurrentA: 0.19, stallEffort: 8.8, stallCurrentA: 5.2 },
    ...{
      massKg: 0.34,
      mountMassKg: 0.12,
      electronicsMassKg: 0.045,
      poweredAtHold: false,
      poweredAtRest: false,
    },
    ...{ lengthM: 0.122, widthM: 0.058, heightM: 0.04, maximumVoltageV: 14 },
  },
  'screw-actuator': {
    ...{ ratedVoltageV: 12, noLoadSpeed: 0.03, noLoadCurrentA: 0.4, stallEffort: 700, stallCurrentA: 5 },
    ...{ coupling: 'strut', strokeM: 0.1, closedLengthM: 0.2, onShareFraction: 0.25, onPeriodS: 1200 },
    ...{ massKg: 0.42, mountMassKg: 0.06, poweredAtHold: false, poweredAtRest: false, maximumVoltageV: 14 },
    ...{ lengthM: 0.2, widthM: 0.06, heightM: 0.04 },
  },
};

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
      sheet: plainSheet({
        ...sheets[type],
        ...(id === 'servo-gaps' ? { massKg: null, lengthM: null } : {}),
        source: `invented listing ${index + 1}`,
        sourceDate: '2026-02-05',
      }),
      typical: plainTypical[type],
      extra: {},
      line: index + 2,
      file: 'candidates.csv',
    })),
    baselineId: 'servo-now',
    targetRuntimeS: 7200,
    eventsPerYearCount: 5,
    hourPriceMoney: 12,
    criteria: [
      criterion('runtime', 4, { direction: 'at-least', bound: 3600 }),
      criterion('body_mass', 2, { direction: 'at-most', bound: 1 }),
      criterion('rework_hours', 1, null),
    ],
    day: [],
    measured: [],
    drawsCount: 0,
    seed: 1,
    provenance: createProvenance(candidates.map((candidate) => candidate.id)),
  };
}
