import { decidingPowerCut } from '../../simulate/outcome.js';
import { cited } from '../../sources/sources.js';
import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { celsius, kelvinOf, newtons } from '../figures.js';
import { carefulForceN, destroyedCaseK, longContactK, severeForceN } from '../thresholds.js';
import { about } from './caution.js';
import { drawnSeverity, inSoMany, shareOfDraws } from './drawn-share.js';

/** One second of contact, by material. */
const briefContactK = {
  metal: cited(kelvinOf(65), 'iso-13732-1', 'burn thresholds, uncoated metal, 1 s; from memory'),
  plastic: cited(kelvinOf(85), 'iso-13732-1', 'burn thresholds, plastics, 1 s; from memory'),
};

/** Cautions about touching, pinching and pushing the feature and its drive. */
export function contactCautions(judged: Judged): Caution[] {
  return [...crush(judged), ...hotCase(judged), ...noBreakaway(judged)];
}

function crush(judged: Judged): Caution[] {
  const { crushForceN, crushForceAtTipN } = judged.run.nominal;
  if (crushForceN === null) return [];
  const share = shareOfDraws(judged, 'crushForceN', (drawnN) => drawnN >= severeForceN);
  const isSevere = crushForceN >= severeForceN;
  const severity = drawnSeverity(isSevere, share) ?? (crushForceN >= carefulForceN ? 'caution' : null);
  if (severity === null) return [];
  const isWorseInDraws = !isSevere && drawnSeverity(false, share) !== null;
  const atTip =
    crushForceAtTipN === null ? '' : ` near the hinge and ${newtons(crushForceAtTipN)} at the tip`;
  const where = judged.study.feature.kind === 'hinge' ? atTip : '';
  const words = {
    figure: newtons(crushForceN),
    text: `At stall it can squeeze a hand with ${newtons(crushForceN)}${where}${isWorseInDraws ? `, and with ${newtons(severeForceN)} or more ${inSoMany(share)}` : ''}.`,
    action: 'Cover the gap, limit the current, and keep hands out while it is powered.',
  };
  return [about(judged, 'crush', severity, words)];
}

function hotCase(judged: Judged): Caution[] {
  const material = judged.candidate.sheet.caseMaterial ?? 'metal';
  const burnsK = briefContactK[material];
  const burns = caseAbove(judged, burnsK);
  if (burns !== null) {
    const words = {
      figure: burns.figure,
      text: `The case ${burns.does}: a touch of one second can burn (${material}, from ${celsius(burnsK)}).`,
      action: 'Cover it so that nobody can touch it, give it air, and lower the effort it holds.',
    };
    return [about(judged, 'hot-case', burns.severity, words)];
  }
  const warms = judged.study.carrier.worn ? caseAbove(judged, longContactK) : null;
  if (warms === null) return [];
  const words = {
    figure: warms.figure,
    text: `The case ${warms.does}; skin bears ${celsius(longContactK)} for hours, whatever the material.`,
    action: 'Keep a layer of air and foam between the drive and the body.',
  };
  return [about(judged, 'hot-case', 'caution', words)];
}

/** Whether the settled case gets so warm, by the nominal figures or in the draws, and what it does in words. */
function caseAbove(judged: Judged, limitK: number) {
  const caseK = judged.run.nominal.caseTemperatureK;
  const isAbove = caseK !== null && caseK >= limitK;
  const share = shareOfDraws(judged, 'caseTemperatureK', (drawnK) => drawnK >= limitK);
  const severity = drawnSeverity(isAbove, share);
  if (severity === null) return null;
  if (!isAbove) {
    const figure = `${celsius(limitK)} ${inSoMany(share)}`;
    return { severity, figure, does: `gets to ${celsius(limitK)} or more ${inSoMany(share)}` };
  }
  // A case that hot sits on a winding long gone; what it would settle at, nobody will see.
  if (caseK >= destroyedCaseK) {
    const figure = `past ${celsius(destroyedCaseK)}`;
    return { severity, figure, does: `gets hotter than the drive survives, ${figure}` };
  }
  return { severity, figure: celsius(caseK), does: `settles at ${celsius(caseK)}` };
}

/** A drive that does not yield passes a push on to its teeth and its mount. */
function noBreakaway(judged: Judged): Caution[] {
  const { unpoweredPushDownN } = judged.run.nominal;
  const { backdrivesAtEffort, breaksAtEffort } = judged.candidate.sheet;
  if (
    !decidingPowerCut(judged.run.nominal).stays ||
    unpoweredPushDownN !== null ||
    backdrivesAtEffort !== null
  )
    return [];
  const words = {
    figure: 'does not yield',
    text: `It does not yield when somebody pushes the feature: the force goes into teeth and mount${breaksAtEffort === null ? ', and nobody has said what breaks them' : ' up to what breaks them'}.`,
    action: 'Add a breakaway: a magnet, a slipping clamp or a pin that gives way first.',
  };
  return [about(judged, 'no-breakaway', 'caution', words)];
}
