import type { CandidateRun } from '../simulate/outcome.js';
import type { MeasuredQuantity } from '../study/choosing.js';
import type { Candidate, Study } from '../study/study.js';

/** What a study predicts for the things that can be measured on the day; null where it predicts nothing. */
export type Predictions = Record<MeasuredQuantity, number | null>;

/** What each prediction counts, in a few words. */
export const predictionWords: Record<MeasuredQuantity, string> = {
  runtime: 'until the run on a pack ends',
  hold_current: 'all drives, nothing else',
  rest_current: 'all drives, nothing else',
  move_time: 'longest move of the loop',
  loop_charge: 'whole pack, one loop',
  case_temperature: 'hottest case in the show',
};

/** Reads the predictions off a run. SI. */
export function predictions(study: Study, run: CandidateRun): Predictions {
  const { nominal } = run;
  return {
    runtime: nominal.runtimeS,
    hold_current: nominal.holdPackCurrentA,
    rest_current: restCurrentA(study, run),
    move_time: longestMoveS(study, run),
    loop_charge:
      nominal.meanPackCurrentA === null || nominal.loopS === null
        ? null
        : nominal.meanPackCurrentA * nominal.loopS,
    case_temperature: nominal.caseTemperatureK,
  };
}

/** Simulates one candidate of a study. */
export type Simulate = (study: Study, candidate: Candidate) => CandidateRun;

/** Energy of the drives at rest, their idle electronics included, over the time of the rests. */
function restCurrentA(study: Study, { nominal: { energy, loopS } }: CandidateRun): number | null {
  const rests = study.show.loop.filter(({ action }) => action === 'rest');
  const restS = rests.reduce((sum, { durationS }) => sum + durationS, 0);
  if (energy === null || loopS === null || restS === 0) return null;
  const packV = study.pack.seriesCount * study.pack.chemistry.nominalVoltageV;
  return (energy.drivesRestingJ / restS + energy.drivesIdleJ / loopS) / packV;
}

/** As it is played, which may be longer than written. */
function longestMoveS(study: Study, { nominal: { stretchRatios } }: CandidateRun): number | null {
  const isMove = ({ action }: { action: string }) => action === 'move';
  const before = study.show.leadIn.filter(isMove).length;
  const times = study.show.loop
    .filter(isMove)
    .map(({ durationS }, index) => durationS * (stretchRatios[before + index] ?? Number.NaN));
  return times.length === 0 || times.some(Number.isNaN) ? null : Math.max(...times);
}
