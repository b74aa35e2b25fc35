import type { CandidateAssessment } from '../../../src/assess/assessment.js';
import type { BreakEven } from '../../../src/assess/break-even.js';
import type { CandidateCertainty, Certainty, RatedChange } from '../../../src/assess/certainty.js';
import { leaderOf, type VerdictParts } from '../../../src/assess/verdict/verdict-parts.js';
import type { Measurable } from '../../../src/assess/what-if/measure-first.js';
import type { Study } from '../../../src/study/study.js';
import { ranked } from '../certainty/drawn.js';
import { candidate, run, study } from '../hand-made.js';

/** How one candidate of a hand-made verdict stands. */
export interface Stands {
  /** Passes nominally; true when not said. */
  passes?: boolean | null;
  /** P(pass); 1 when not said. */
  passing?: number | null;
  /** P(leads). */
  leads: number;
  workH?: number;
}

/** Parts of a verdict on a drive of today, `now`, and one other, `worm`; with `null` there is no drive of today. */
export function parts(
  now: Stands | null,
  worm: Stands,
  changes: Partial<Pick<VerdictParts, 'changes' | 'measurables' | 'sensitivity' | 'ifHeld'>> & {
    events?: number | null;
    hourPrice?: number;
    pays?: number;
    ties?: [string, string][];
  } = {},
): VerdictParts {
  const stands: [string, Stands][] = [
    ...(now === null ? [] : [['now', now] as [string, Stands]]),
    ['worm', worm],
  ];
  const candidates = stands.map(([id, { passes = true, workH = id === 'now' ? 0 : 10 }]) =>
    ranked(id, { passes, nominal: { ...run(id).nominal, reworkTimeS: workH * 3600, cost: 40 } }),
  );
  candidates.sort((a, b) => order(a) - order(b));
  const beats = worm.leads / Math.max(1e-9, worm.leads + (now?.leads ?? 0));
  const certainty: Certainty = {
    draws: 100,
    generator: '',
    sobolInputs: 0,
    candidates: Object.fromEntries(stands.map(([id, one]) => [id, certain(one)])),
    pairwise: [
      { candidate: 'worm', against: 'now', beatProbability: beats },
      { candidate: 'now', against: 'worm', beatProbability: 1 - beats },
    ],
    ties: changes.ties ?? [],
    pointsOfView: [],
    sensitivity: null,
    calibration: null,
    nominalApart: [],
    runDownBands: [],
    weightsDrawn: 'any',
  };
  const leader = leaderOf(candidates, certainty);
  const of = study(
    candidates.map(({ id }) => candidate(id)),
    [],
    {
      baselineId: now === null ? null : 'now',
      hourPriceMoney: changes.hourPrice ?? 10,
      targetRuntimeS: 3600,
    },
  );
  const { events = 5 } = changes;
  const { pays = events !== null && events <= 10 ? 0.9 : 0.1 } = changes;
  return {
    study: of as Study,
    ranked: candidates,
    certainty,
    leader,
    baseline: candidates.find(({ isBaseline }) => isBaseline) ?? null,
    changes: changes.changes ?? [],
    breakEven: now === null || leader.isBaseline ? null : paid(events),
    payProbability: () => pays,
    measurables: changes.measurables ?? [],
    against: leader.id === 'now' ? 'worm' : now === null ? null : 'now',
    ifHeld: changes.ifHeld ?? null,
    sensitivity: changes.sensitivity ?? null,
  };
}

const order = ({ passes }: CandidateAssessment) => (passes === true ? 0 : passes === null ? 1 : 2);

const certain = ({ passing = 1, leads }: Stands): CandidateCertainty => ({
  uncertain: { runtimeS: { p10: 3000, median: 3600, p90: 4800, occursFraction: 1 } },
  passProbability: passing,
  limitProbabilities: [],
  passesOnPaper: false,
  leadProbability: leads,
  score: null,
  acceptability: [],
  centralWeights: null,
  confidenceFactor: null,
});

const paid = (eventCount: number | null): BreakEven => ({
  investmentMoney: 100,
  valuePerEventMoney: 20,
  parts: [],
  eventCount,
  yearCount: null,
  runtimePerWorkRatio: null,
  series: { eventCounts: [], balancesMoney: [] },
  sentence: `It pays after ${eventCount} events.`,
});

/** A reading that is worth so much of the score. */
export function reading(worthScore: number, measurable = true): Measurable {
  const worth = {
    path: 'feature.massKg',
    field: 'feature.mass',
    owner: null,
    label: 'mass',
    worthScore,
    changedProbability: 10 * worthScore,
    measurable,
    instrument: measurable ? 'kitchen scale' : '',
    method: '',
    minutes: 5,
    precision: '±5 %',
  };
  return {
    knowable: {
      path: worth.path,
      field: worth.field,
      owner: null,
      label: worth.label,
      values: Float64Array.of(1, 2),
      show: String,
      scale: 'share',
      bench: measurable ? { instrument: 'kitchen scale', minutes: 5, method: '' } : null,
    },
    worth,
    leadSwingScore: 0.1,
    ends: [
      { shown: '800 g', below: true, aheadProbability: 0.1 },
      { shown: '900 g', below: false, aheadProbability: 0.9 },
    ],
    passSwings: [],
  };
}

/** A lesser change that takes so many hours and reaches so much of the leader's gain. */
export function change(
  title: string,
  workH: number,
  leaderGainRatio: number,
  more: Partial<RatedChange> = {},
): RatedChange {
  const gain = {
    runtimeS: 600,
    playingTimeS: 600,
    holdPowerW: 1,
    meanPackCurrentA: 0.1,
    torqueMarginRatio: 0,
    holdEffortRatio: 0,
    windingTemperatureK: 0,
    score: 0.1,
  };
  return {
    id: 'assist-spring',
    parts: ['assist-spring'],
    title,
    actions: [],
    settings: [],
    burden: { massKg: 0.05, costMoney: 10, workTimeS: workH * 3600, basis: '' },
    sideEffects: [],
    after: {
      runtimeS: 4200,
      playingTimeS: 4200,
      holdPowerW: 1,
      meanPackCurrentA: 0.4,
      peakPackCurrentA: 1,
      torqueMarginRatio: 2,
      holdEffortRatio: 0.1,
      windingTemperatureK: 300,
      cueFidelityRatio: 1,
      bodyMassKg: 1,
      fallEnergyJ: 0,
      score: 0.6,
    },
    gain,
    gainPerHundredGrams: null,
    passes: true,
    gainBands: null,
    passProbability: 0.95,
    leaderGainRatio,
    replaceProbability: 0.95,
    ...more,
  };
}
