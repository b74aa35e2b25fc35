import type { Cue } from '../../study/show.js';
import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { celsius, minutes, percent, shortTime } from '../figures.js';
import { about } from './caution.js';
import { drawnSeverity, inSoMany, shareOfDraws } from './drawn-share.js';

/** Cautions about windings that get too hot, in the show or when a hold lasts. */
export function heatCautions(judged: Judged): Caution[] {
  return [...windingInShow(judged), ...heldTooLong(judged), ...onShare(judged), ...whenWarm(judged)];
}

function windingInShow(judged: Judged): Caution[] {
  const { windingTemperatureK } = judged.run.nominal;
  const limitK = judged.candidate.sheet.windingLimitK;
  const isPast = windingTemperatureK !== null && windingTemperatureK > limitK;
  const share = shareOfDraws(judged, 'windingTemperatureK', (drawnK) => drawnK > limitK);
  const severity = drawnSeverity(isPast, share);
  if (severity === null) return [];
  const limit = celsius(limitK);
  // No figure beyond the limit: the motor burns out before it gets there.
  const words = {
    figure: isPast ? `past ${limit}` : `past ${limit} ${inSoMany(share)}`,
    text: isPast
      ? `In the looped show the winding passes its limit of ${limit}${share === null ? '' : ` (${inSoMany(share)})`}: it would burn out.`
      : `In the looped show the winding passes its limit of ${limit} ${inSoMany(share)}; by the nominal figures it stays below.`,
    action: 'Lower the effort it holds, lengthen the rests, or take a larger drive.',
  };
  return [about(judged, 'winding-hot', severity, words)];
}

function heldTooLong(judged: Judged): Caution[] {
  const { timeToLimitHoldingS, thermalRunaway } = judged.run.nominal;
  const longestS = longestHoldS(judged.study.show.loop);
  const limit = celsius(judged.candidate.sheet.windingLimitK);
  if (timeToLimitHoldingS === null && !thermalRunaway) return [];
  const reached = timeToLimitHoldingS === null ? '' : ` after ${shortTime(timeToLimitHoldingS)}`;
  const severe = timeToLimitHoldingS !== null && timeToLimitHoldingS < longestS;
  const words = {
    figure: timeToLimitHoldingS === null ? 'never settles' : shortTime(timeToLimitHoldingS),
    text: `${thermalRunaway ? 'If the first hold lasts, the winding heats itself without end' : 'If the first hold lasts, the winding passes its limit'}: ${limit}${reached === '' ? ' is passed' : ` is reached${reached}`}; the longest hold of the show lasts ${shortTime(longestS)}.`,
    action: 'Never leave it holding in a pause: rest the feature on a stop and cut the power.',
  };
  const code = thermalRunaway ? 'thermal-runaway' : 'hold-time';
  return [about(judged, code, severe || thermalRunaway ? 'severe' : 'caution', words)];
}

function onShare(judged: Judged): Caution[] {
  const worst = judged.run.nominal.onShareFraction;
  const allowed = judged.candidate.sheet.onShareFraction;
  if (worst === null || allowed === null || worst <= allowed) return [];
  const periodS = judged.candidate.sheet.onPeriodS;
  const words = {
    figure: percent(worst),
    text: `It runs ${percent(worst)} of the time${periodS === null ? '' : ` in its worst ${minutes(periodS)}`}; ${percent(allowed)} are allowed.`,
    action: 'Write more rest into the cue list, or take an actuator rated for a larger share.',
  };
  return [about(judged, 'on-share', 'caution', words)];
}

const whenWarmAction = {
  'slower-when-warm': 'Rehearse with a warm drive; leave slack in the cue list.',
  'cannot-hold-when-warm': 'Lower the effort it holds, lengthen the rests, or take a larger drive.',
};

/**
 * What the warm winding does to moves and holds, as the simulation found it. Nothing of a winding past its limit: it
 * has burnt out by then, which is a caution of its own, and no rehearsal helps.
 */
function whenWarm(judged: Judged): Caution[] {
  const { windingTemperatureK } = judged.run.nominal;
  if (windingTemperatureK !== null && windingTemperatureK > judged.candidate.sheet.windingLimitK) return [];
  return judged.run.findings.flatMap(({ code, message }) => {
    if (code !== 'slower-when-warm' && code !== 'cannot-hold-when-warm') return [];
    const words = {
      figure: windingTemperatureK === null ? 'when warm' : celsius(windingTemperatureK),
      text: message,
      action: whenWarmAction[code],
    };
    return [about(judged, code, code === 'cannot-hold-when-warm' ? 'severe' : 'caution', words)];
  });
}

/** Length of the longest unbroken run of hold cues. */
function longestHoldS(cues: Cue[]): number {
  let longestS = 0;
  let runS = 0;
  for (const cue of cues) {
    runS = cue.action === 'hold' ? runS + cue.durationS : 0;
    longestS = Math.max(longestS, runS);
  }
  return longestS;
}
