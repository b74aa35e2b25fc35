import type { ChangesFrom } from '../../src/assess/assessment.js';
import type { RatedChange } from '../../src/assess/certainty.js';
import type {
  ChangeFigures,
  ChangeGain,
  LesserChangeId,
} from '../../src/assess/lesser-changes/lesser-change.js';
import { bandAbout } from './fixture-certainty.js';

const before: ChangeFigures = {
  runtimeS: 3400,
  playingTimeS: 6800,
  holdPowerW: 4.12,
  meanPackCurrentA: 0.91,
  peakPackCurrentA: 3.05,
  torqueMarginRatio: 1.12,
  holdEffortRatio: 0.37,
  windingTemperatureK: 344,
  cueFidelityRatio: 1,
  bodyMassKg: 0.384,
  fallEnergyJ: 1.27,
  score: 0.47,
};

function change(
  id: RatedChange['id'],
  parts: LesserChangeId[],
  title: string,
  runtimeGainS: number,
  figures: { score: number; massKg: number; passes?: boolean },
): RatedChange {
  const gain: ChangeGain = {
    runtimeS: runtimeGainS,
    playingTimeS: runtimeGainS * 2,
    holdPowerW: runtimeGainS > 0 ? 1.9 : 0,
    meanPackCurrentA: 0.2,
    torqueMarginRatio: 0.4,
    holdEffortRatio: 0.12,
    windingTemperatureK: 11,
    score: figures.score,
  };
  const scale = figures.massKg === 0 ? null : 0.1 / figures.massKg;
  return {
    id,
    parts,
    title,
    actions: [`Do what ${title.toLowerCase()} asks for`, 'Try it by hand before the glue sets'],
    settings: [],
    burden: {
      massKg: figures.massKg,
      costMoney: 12,
      workTimeS: 14400,
      basis: 'from experience, no published source',
    },
    sideEffects: [`${title} makes the fall harder by a little`],
    after: { ...before, runtimeS: 3400 + runtimeGainS, score: before.score + figures.score },
    gain,
    gainPerHundredGrams:
      scale === null ? null : { ...gain, runtimeS: runtimeGainS * scale, score: figures.score * scale },
    passes: figures.passes ?? true,
    gainBands: {
      score: bandAbout(figures.score, 0.5, 1.4),
      runtimeS: bandAbout(runtimeGainS, 0.5, 1.4),
      holdPowerW: null,
      meanPackCurrentA: null,
    },
    passProbability: figures.passes === false ? 0.2 : 0.88,
    leaderGainRatio: figures.score / 0.34,
    replaceProbability: 0.8,
  };
}

/** Four changes and a pair; one does not make the drive of today pass. */
export function createChanges(): RatedChange[] {
  return [
    change('assist-spring', ['assist-spring'], 'Assist spring on the hinge', 1860, {
      score: 0.16,
      massKg: 0.055,
    }),
    change('rest-on-stop', ['rest-on-stop'], 'Rest on the stop with the power off', 900, {
      score: 0.08,
      massKg: 0.015,
    }),
    change('dimmer-lights', ['dimmer-lights'], 'Dimmer lights', 300, { score: 0.03, massKg: 0 }),
    change('slower-moves', ['slower-moves'], 'Slower moves', 40, { score: 0.002, massKg: 0, passes: false }),
    change(
      'pair',
      ['rest-on-stop', 'assist-spring'],
      'Rest on the stop, and assist spring on the hinge',
      2500,
      {
        score: 0.21,
        massKg: 0.07,
      },
    ),
  ];
}

/** Where the changes start. */
export function createChangesFrom(): ChangesFrom {
  return {
    candidate: 'servo-now',
    before,
    passesBefore: false,
    leftOut: [{ id: 'hold-latch', reason: 'no cue holds long enough at one place' }],
  };
}
