import type { CandidateAssessment, LimitOutcome } from '../../src/assess/assessment.js';
import type { PowerCutOutcome } from '../../src/simulate/outcome.js';
import { createNominal, type Wanted } from './fixture-nominal.js';

const stays: PowerCutOutcome = {
  stays: true,
  staysWhenShaken: true,
  fromPosition: 1,
  towards: 'lower',
  fallS: null,
  tipSpeedMPerS: null,
  largestTipSpeedMPerS: null,
  impactEnergyJ: null,
  tipForceN: null,
};

const falls: PowerCutOutcome = {
  stays: false,
  staysWhenShaken: false,
  fromPosition: 1,
  towards: 'lower',
  fallS: 0.62,
  tipSpeedMPerS: 2.31,
  largestTipSpeedMPerS: 2.44,
  impactEnergyJ: 1.27,
  tipForceN: 254,
};

function limit(criterion: string, bound: number, value: number | null, passes: boolean | null): LimitOutcome {
  const direction = ['runtime', 'torque_margin', 'fits'].includes(criterion) ? 'at-least' : 'at-most';
  const inside = value === null ? null : direction === 'at-least' ? value - bound : bound - value;
  const margin = inside === null ? null : inside / bound;
  return {
    criterion,
    direction,
    limit: bound,
    value,
    passes,
    margin,
    ...(passes === null ? { missing: 'mass' } : {}),
  };
}

function limitsOf(id: string): LimitOutcome[] {
  const runtimes: Record<string, number> = { 'worm-relay': 10920, 'screw-strut': 9000, 'servo-now': 3400 };
  const runtimeS = runtimes[id] ?? 5400;
  const stuck: LimitOutcome[] =
    id === 'worm-quick'
      ? [
          {
            ...limit('moves', 1, 0, false),
            margin: -1,
            reason: 'cannot lift the feature at 0°, it stalls at 8.1 N·m',
          },
        ]
      : [];
  return [
    ...stuck,
    limit('voltage', 8.6, 8.4, true),
    limit('fits', 1, id === 'servo-gaps' ? null : 1, id === 'servo-gaps' ? null : true),
    id === 'worm-quick'
      ? limit('runtime', 3600, null, null)
      : limit('runtime', 3600, runtimeS, runtimeS >= 3600),
    limit('body_mass', 1, id === 'servo-gaps' ? null : 0.71, id === 'servo-gaps' ? null : true),
    limit('torque_margin', 1.3, id === 'servo-now' ? 1.12 : 2.4, id !== 'servo-now'),
  ];
}

function passesOf(limits: LimitOutcome[]): boolean | null {
  if (limits.some((one) => one.passes === false)) return false;
  return limits.some((one) => one.passes === null) ? null : true;
}

/** Loop currents that rise while moving and stay while holding; steps for a servo, rest for a worm. */
function loopSeries(holdA: number, moveA: number): CandidateAssessment['series']['loop'] {
  const timesS = Array.from({ length: 1400 }, (_, index) => (index * 177) / 1399);
  const isMoving = (time: number) => time % 40 < 4;
  return {
    timesS,
    positions: timesS.map((time) => Math.sin(time / 20)),
    driveEfforts: timesS.map((time) => 2 + Math.sin(time / 20)),
    availableEfforts: timesS.map(() => 5),
    packCurrentsA: timesS.map(
      (time) => (isMoving(time) ? moveA * Math.sin((time % 40) * 0.785) ** 2 : holdA) + 0.35,
    ),
  };
}

function runDown(endS: number): CandidateAssessment['series']['runDown'] {
  const timesS = Array.from({ length: 60 }, (_, index) => (index * endS) / 59);
  const socFractions = timesS.map((time) => 1 - (time / endS) * 0.8);
  const meanVoltagesV = socFractions.map((soc) => 6.9 + 1.3 * soc - 0.5 * Math.exp(-(soc - 0.15) * 14));
  return { timesS, meanVoltagesV, lowestVoltagesV: meanVoltagesV.map((volts) => volts - 0.15), socFractions };
}

/** Winding and case on their way to settled temperatures; nothing where those are not known. */
function heat(windingK: number | null, caseK: number | null, settlingS: number) {
  if (windingK === null || caseK === null)
    return { timesS: [], windingTemperaturesK: [], caseTemperaturesK: [] };
  const timesS = Array.from({ length: 120 }, (_, index) => index * 60);
  const towards = (endK: number) =>
    timesS.map((time) => 287 + (endK - 287) * (1 - Math.exp(-time / settlingS)));
  return { timesS, windingTemperaturesK: towards(windingK), caseTemperaturesK: towards(caseK) };
}

/** One candidate of the fixture; its id decides what is odd about it. */
export function createCandidate(wanted: Wanted): CandidateAssessment {
  const limits = limitsOf(wanted.id);
  const isServo = wanted.type === 'position-servo';
  const cannotMove = wanted.id === 'worm-quick';
  const nominal = createNominal(wanted, isServo ? falls : stays, {
    ...falls,
    fallS: 1.9,
    impactEnergyJ: 0.31,
  });
  return {
    id: wanted.id,
    label: wanted.label,
    type: wanted.type ?? 'worm-gearmotor',
    isBaseline: wanted.id === 'servo-now',
    rank: wanted.rank,
    passes: passesOf(limits),
    score: [0.81, 0.64, 0.47, 0.44, 0.12][wanted.rank - 1] ?? 0,
    nonDominated: wanted.rank < 3,
    limits,
    criteria: [],
    findings:
      wanted.id === 'servo-gaps'
        ? [
            {
              code: 'efficiency-above-one',
              severity: 'impossible',
              field: 'stall_torque',
              message:
                'Stall torque implies an efficiency of 1.69; 5.9 kg·cm would be consistent with its currents.',
            },
            {
              code: 'no-mass',
              severity: 'note',
              field: 'mass',
              message: 'No mass: what rests on it is not judged.',
            },
          ]
        : [],
    assumed: [
      {
        field: 'no_load_current',
        value: 0.46,
        unit: 'A',
        shown: '0.46 A (0.23–1.2)',
        basis: '8 % of stall current, typical of servos',
      },
      {
        field: 'idle_current',
        value: 0.01,
        unit: 'A',
        shown: '10 mA (4–30)',
        basis: 'from experience, no source',
      },
      {
        field: 'winding_limit',
        value: 373,
        unit: 'K',
        shown: '100 °C (85–125)',
        basis: 'common insulation of small motors',
      },
    ],
    motor: {
      resistanceOhm: 1.28,
      speedConstant: 1.61,
      noLoadCurrentA: 0.3,
      stallCurrentA: 5.8,
      stallEffort: 6.37,
      listedStallEffort: 6.37,
      forwardEfficiency: 0.72,
      backwardEfficiency: isServo ? 0.46 : -0.31,
      backwardEfficiencyStatic: isServo ? 0.46 : -0.64,
      backwardEfficiencyShaken: isServo ? 0.46 : -0.12,
    },
    nominal,
    uncertain: {},
    acceptability: [],
    series: {
      loop: cannotMove
        ? { timesS: [], positions: [], driveEfforts: [], availableEfforts: [], packCurrentsA: [] }
        : loopSeries(isServo ? 0.55 : 0, isServo ? 2.7 : 1.4),
      runDown:
        nominal.runtimeS === null
          ? { timesS: [], lowestVoltagesV: [], meanVoltagesV: [], socFractions: [] }
          : runDown(nominal.runtimeS),
      heatInShow: heat(nominal.windingTemperatureK, nominal.caseTemperatureK, 3000),
      heatHolding: heat(isServo ? 420 : 288, isServo ? 360 : 288, 2000),
    },
  };
}
