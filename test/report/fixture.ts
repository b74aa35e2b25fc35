import type { Assessment, CandidateAssessment, Caution } from '../../src/assess/assessment.js';
import { createCandidate } from './fixture-candidate.js';
import { createCertainty } from './fixture-certainty.js';
import { createChanges, createChangesFrom } from './fixture-changes.js';
import { createDay } from './fixture-day.js';
import { createStudy } from './fixture-study.js';

const standing: Caution[] = [
  [
    'lithium',
    'Lithium packs burn when crushed, pierced or shorted.',
    'Charge attended, carry in a hard case.',
  ],
  [
    'pinch',
    'Hinges and linkages pinch, most of all near the hinge.',
    'Cover the gaps; agree on a stop word.',
  ],
  ['falling-feature', 'Any feature can fall.', 'Fit a stop or a tether that carries all of it.'],
  ['worn-load', 'A load on the body tires and unbalances.', 'Fit a quick release and rehearse getting out.'],
  ['public-contact', 'Spectators reach out, children most of all.', 'Keep an arm length of distance.'],
  [
    'unexpected-start',
    'Drives move at power-on and on a lost signal.',
    'Put a switch in reach of the bearer.',
  ],
  [
    'codes-first',
    'Local codes, the organiser’s rules and licensed practice come first. This is a calculation, not an approval.',
    'Show this report to whoever is responsible on the day.',
  ],
].map(([code, text, action]) => ({
  code: code!,
  severity: 'note' as const,
  candidate: null,
  figure: '',
  text: text!,
  action: action!,
}));

function caution(
  code: string,
  severity: Caution['severity'],
  candidate: string | null,
  figure: string,
  text: string,
): Caution {
  return {
    code,
    severity,
    candidate,
    figure,
    text,
    action: `What to do about ${code.replaceAll('-', ' ')}.`,
  };
}

/** Cautions of every kind, two of the same code so that they are joined. */
function createCautions(): Caution[] {
  return [
    caution(
      'crush',
      'severe',
      'worm-relay',
      '412 N',
      'Crushes with 412 N near the hinge; 140 N already hurt.',
    ),
    caution(
      'crush',
      'severe',
      'screw-strut',
      '268 N',
      'Crushes with 268 N near the hinge; 140 N already hurt.',
    ),
    caution('hold-effort', 'severe', 'servo-now', '44 % of stall', 'Holds at 44 % of its stall effort.'),
    caution('falls', 'caution', 'servo-now', '0.6 s', 'Without power the feature falls in 0.6 s.'),
    caution('on-share', 'caution', 'screw-strut', '31 %', 'Runs 31 % of the time; 25 % are allowed.'),
    caution('watt-hours', 'note', null, '9.62 Wh', 'One pack holds 9.62 Wh, far under what aircraft allow.'),
    ...standing,
  ];
}

/** Five candidates: one leads, one exists and fails, one cannot move, one has gaps, one has an odd label. */
export function createCandidates(): CandidateAssessment[] {
  return [
    createCandidate({
      id: 'worm-relay',
      label: 'Worm gearmotor, relay switched, position sensed at the hinge',
      rank: 1,
    }),
    createCandidate({
      id: 'screw-strut',
      label: 'Screw actuator under the neck',
      rank: 2,
      type: 'screw-actuator',
    }),
    createCandidate({
      id: 'servo-now',
      label: 'Servo as built (35 kg·cm, 7.4 V)',
      rank: 3,
      type: 'position-servo',
    }),
    createCandidate({
      id: 'servo-gaps',
      label: 'Servo with gaps \u001b[31m⌀ 20 mm 🦢',
      rank: 4,
      type: 'position-servo',
    }),
    createCandidate({ id: 'worm-quick', label: 'Worm, two-start, quick', rank: 5 }),
  ];
}

const reasons = [
  'One pack lasts 182 min with the worm and 61 min with the servo; 120 min would be enough.',
  'The worm holds with the power off; the servo draws 4.12 W while it holds.',
  'The price of the worm: 214 g more on the body, 45 EUR, 14 h of work.',
];

/** A plausible assessment, made by hand: its figures fit together but come from no calculation. */
export function createAssessment(changes: Partial<Assessment> = {}): Assessment {
  const candidates = createCandidates();
  return {
    format: 'holdwright-results/1',
    version: '0.1.0',
    modelVersion: '1',
    seed: 1,
    draws: 0,
    inputHash: '3f9ac21be04d7786c1b5a0e94b1f6f0d2f1f2a6f3e7f3bb0f6e0c4f0f58d9a21',
    study: createStudy(candidates),
    believed: null,
    candidates,
    leader: 'worm-relay',
    baseline: 'servo-now',
    verdict: {
      kind: 'redesign',
      leader: 'worm-relay',
      change: [],
      sentence:
        'Change to Worm gearmotor, relay switched: it runs 182 min on one pack where the servo of today runs 61 min.',
      confidence: {
        probability: null,
        word: 'open',
        sentence: 'No draws were made, so nothing says how sure this is.',
      },
      reasons,
      overturnedBy: ['The servo holds with less current than its listing lets one expect.'],
    },
    answer: {
      sentence: 'Change to Worm gearmotor, relay switched: it leads the servo of today.',
      reasons,
    },
    certainty: null,
    lesserChanges: [],
    lesserChangesFrom: null,
    day: null,
    breakEven: null,
    nextMeasurements: [
      {
        field: 'hold_current',
        candidate: 'servo-now',
        label: 'hold current of the servo',
        why: 'Two ways to compute it differ by a factor of 3.1; the runtime of today moves by 48 min with it.',
        instrument: 'multimeter',
        method: 'Hold the neck at 56°, put the meter into the servo lead, read after ten seconds.',
        minutes: 10,
        swing: 2880,
      },
    ],
    cautions: createCautions(),
    protection: candidates.map(({ id }) => ({
      candidate: id,
      peakCurrentA: 3.1,
      tenSecondCurrentA: 1.2,
      meanCurrentA: 0.6,
      startUpCurrentA: 4.6,
      packContinuousA: 32.5,
      fuseContinuousA: 5.6,
      protectionTripA: 12,
      wireContinuousA: 11,
      adviceTripA: 10,
      adviceDelayS: 0.02,
      advice: 'A board that trips at 10 A after 20 ms carries the show and still protects pack and wire.',
    })),
    figuresGiven: 118,
    figuresAssumed: 61,
    inputs: [
      { name: 'study.csv', sha256: 'a1'.repeat(32), text: 'item,value,unit,note\n' },
      { name: 'candidates.csv', sha256: 'b2'.repeat(32), text: 'id,label,type\n' },
    ],
    ...changes,
  };
}

/** The same with everything that draws, the day and the lesser changes add. */
export function createDrawnAssessment(changes: Partial<Assessment> = {}): Assessment {
  const plain = createAssessment();
  const certainty = createCertainty(plain.candidates);
  const candidates = plain.candidates.map((candidate) => ({
    ...candidate,
    uncertain: certainty.candidates[candidate.id]!.uncertain,
    acceptability: certainty.candidates[candidate.id]!.acceptability,
  }));
  return {
    ...plain,
    draws: certainty.draws,
    candidates,
    certainty,
    verdict: {
      ...plain.verdict,
      confidence: {
        probability: 0.84,
        word: 'likely',
        sentence: 'Likely: the worm beats the servo of today in 84 % of 2,048 draws of what is not known',
      },
    },
    nextMeasurements: plain.nextMeasurements.map((advice) => ({
      ...advice,
      ...{
        worthScore: 0.034,
        changedProbability: 0.3,
        swing: 0.51,
        precision: '±8 %',
        goesInto: 'hold_current in measured.csv',
      },
    })),
    lesserChanges: createChanges(),
    lesserChangesFrom: createChangesFrom(),
    day: createDay(candidates),
    breakEven: {
      investmentMoney: 213,
      valuePerEventMoney: 6.4,
      parts: [
        { label: 'wear of packs', valueMoney: 0.09 },
        { label: 'swaps', valueMoney: 6.31 },
      ],
      eventCount: 34,
      yearCount: 6.8,
      runtimePerWorkRatio: 0.15,
      series: {
        eventCounts: Array.from({ length: 52 }, (_, events) => events),
        balancesMoney: Array.from({ length: 52 }, (_, events) => events * 6.4 - 213),
      },
      sentence: 'It takes 213 EUR and saves 6.4 EUR at each event: paid for after 34 events, 6.8 years.',
    },
    ...changes,
  };
}
