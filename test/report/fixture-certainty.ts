import type { CandidateAssessment } from '../../src/assess/assessment.js';
import type { Band, CandidateCertainty, Certainty, RunDownBand } from '../../src/assess/certainty.js';

/** A band about a figure: 10 % below it, median a little below, 90 % a little above. */
export function bandAbout(figure: number, low = 0.7, high = 1.05): Band {
  return { p10: figure * low, median: figure * 0.95, p90: figure * high, occursFraction: 1 };
}

const leads = [0.62, 0.11, 0.2, 0.06, 0.01];

/** What the draws say about a candidate of the fixture, by its rank. */
function uncertainOf({ nominal }: CandidateAssessment): CandidateAssessment['uncertain'] {
  return {
    ...(nominal.runtimeS === null ? {} : { runtimeS: bandAbout(nominal.runtimeS) }),
    holdPowerW: bandAbout(nominal.holdPowerW),
    ...(nominal.torqueMarginRatio === null
      ? {}
      : { torqueMarginRatio: bandAbout(nominal.torqueMarginRatio) }),
    ...(nominal.crushForceN === null ? {} : { crushForceN: bandAbout(nominal.crushForceN) }),
    ...(nominal.windingTemperatureK === null
      ? {}
      : { windingTemperatureK: bandAbout(nominal.windingTemperatureK, 0.99, 1.03) }),
    ...(nominal.powerCut.impactEnergyJ === null
      ? {}
      : { fallEnergyJ: { ...bandAbout(nominal.powerCut.impactEnergyJ), occursFraction: 0.83 } }),
  };
}

function certaintyOf(candidate: CandidateAssessment, count: number): CandidateCertainty {
  const lead = leads[candidate.rank - 1] ?? 0;
  const rest = (1 - lead) / Math.max(1, count - 1);
  return {
    uncertain: uncertainOf(candidate),
    passProbability: candidate.passes === null ? null : candidate.rank === 2 ? 0.61 : lead,
    limitProbabilities: candidate.limits.map(({ passes }) => (passes === null ? null : passes ? 0.97 : 0.1)),
    passesOnPaper: candidate.id === 'screw-strut',
    leadProbability: lead,
    score: bandAbout(candidate.score),
    acceptability: Array.from({ length: count }, (_, rank) =>
      rank === 0 && count > 1 ? lead : count > 1 ? rest : 1,
    ),
    centralWeights: lead > 0.05 ? { runtime: 0.5, body_mass: 0.3, rework_hours: 0.2 } : null,
    confidenceFactor: lead > 0.05 ? lead : null,
  };
}

function runDownBand({ id, series: { runDown } }: CandidateAssessment): RunDownBand[] {
  const { timesS, lowestVoltagesV } = runDown;
  const endS = timesS.at(-1);
  if (endS === undefined) return [];
  const shifted = (volts: number) => lowestVoltagesV.map((value) => value + volts);
  return [
    {
      candidate: id,
      timesS,
      lowVoltagesV: shifted(-0.12),
      middleVoltagesV: shifted(-0.03),
      highVoltagesV: shifted(0.06),
      endTimesS: [endS * 0.7, endS * 0.95, endS],
    },
  ];
}

/** Everything draws could say about the candidates of the fixture; made by hand. */
export function createCertainty(candidates: CandidateAssessment[]): Certainty {
  const ids = candidates.map(({ id }) => id);
  return {
    draws: 2048,
    generator: 'sfc32',
    sobolInputs: 12,
    candidates: Object.fromEntries(
      candidates.map((candidate) => [candidate.id, certaintyOf(candidate, candidates.length)]),
    ),
    pairwise: [{ candidate: 'worm-relay', against: 'servo-now', beatProbability: 0.84 }],
    ties: ids.length > 2 ? [[ids[1]!, ids[2]!]] : [],
    pointsOfView: ['wearer', 'builder', 'organiser', 'purse'].map((label, index) => ({
      id: label,
      label,
      weights: { runtime: 0.4, body_mass: 0.6 },
      leadProbabilities: ids.map((candidate, place) => ({
        candidate,
        probability: place === index % ids.length ? 0.7 : 0.3 / Math.max(1, ids.length - 1),
      })),
    })),
    sensitivity: createSensitivity(),
    calibration: null,
    nominalApart: [{ candidate: 'worm-relay', outcome: 'runtimeS', nominal: 10920, median: 8400 }],
    runDownBands: candidates.flatMap(runDownBand),
    weightsDrawn: 'in-order',
  };
}

function createSensitivity(): Certainty['sensitivity'] {
  const input = (field: string, owner: string | null, label: string) => ({
    path: owner === null ? `feature.${field}` : `candidates.${owner}.sheet.${field}`,
    field,
    owner,
    label,
  });
  return {
    leader: 'worm-relay',
    against: 'servo-now',
    swings: [
      {
        ...input('hold_current', 'servo-now', 'current while it holds a known load'),
        ...{ lowShown: '0.3 A', highShown: '1.4 A', leadAtLow: -0.03, leadAtHigh: 0.48 },
      },
      {
        ...input('capacity', 'P-2S-13', 'label capacity of the whole pack'),
        ...{ lowShown: '1010 mAh', highShown: '1260 mAh', leadAtLow: 0.41, leadAtHigh: 0.29 },
      },
      {
        ...input('mass', null, 'mass of the moving feature'),
        ...{ lowShown: '840 g', highShown: '880 g', leadAtLow: 0.33, leadAtHigh: 0.345 },
      },
    ],
    flips: [
      {
        ...input('hold_current', 'servo-now', 'current while it holds a known load'),
        ...{
          value: 0.31,
          nominal: 0.557,
          shown: '0.31 A',
          nominalShown: '0.56 A',
          leaderBeyond: 'servo-now',
        },
        beyondProbability: 0.12,
      },
    ],
    totalEffects: [
      { group: 'baseline', label: 'the sheet of the servo', totalEffect: 0.71 },
      { group: 'pack', label: 'the pack', totalEffect: 0.22 },
    ],
    measureFirst: [
      {
        ...input('hold_current', 'servo-now', 'current while it holds a known load'),
        ...{
          worthScore: 0.034,
          changedProbability: 0.3,
          measurable: true,
          instrument: 'clamp meter',
          minutes: 15,
          precision: '±8 %',
        },
        method: 'put the meter into the lead of the servo and read after ten seconds',
      },
    ],
    weightChange: {
      leader: 'servo-now',
      weights: { runtime: 0.2, body_mass: 0.5, rework_hours: 0.3 },
      distance: 0.31,
    },
  };
}
