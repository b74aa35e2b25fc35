import { decidingPowerCut } from '../../simulate/outcome.js';
import { cited } from '../../sources/sources.js';
import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { celsius, kelvinOf, newtons } from '../figures.js';
import { carefulForceN, longContactK, severeForceN } from '../thresholds.js';
import { about } from './caution.js';

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
  if (crushForceN === null || crushForceN < carefulForceN) return [];
  const atTip =
    crushForceAtTipN === null ? '' : ` near the hinge and ${newtons(crushForceAtTipN)} at the tip`;
  const where = judged.study.feature.kind === 'hinge' ? atTip : '';
  const words = {
    figure: newtons(crushForceN),
    text: `At stall it can squeeze a hand with ${newtons(crushForceN)}${where}.`,
    action: 'Cover the gap, limit the current, and keep hands out while it is powered.',
  };
  return [about(judged, 'crush', crushForceN >= severeForceN ? 'severe' : 'caution', words)];
}

function hotCase(judged: Judged): Caution[] {
  const caseK = judged.run.nominal.caseTemperatureK;
  if (caseK === null) return [];
  const material = judged.candidate.sheet.caseMaterial ?? 'metal';
  const burnsK = briefContactK[material];
  if (caseK >= burnsK) {
    const words = {
      figure: celsius(caseK),
      text: `The case settles at ${celsius(caseK)}: a touch of one second can burn (${material}, from ${celsius(burnsK)}).`,
      action: 'Cover it so that nobody can touch it, give it air, and lower the effort it holds.',
    };
    return [about(judged, 'hot-case', 'severe', words)];
  }
  if (!judged.study.carrier.worn || caseK < longContactK) return [];
  const words = {
    figure: celsius(caseK),
    text: `The case settles at ${celsius(caseK)}; skin bears ${celsius(longContactK)} for hours, whatever the material.`,
    action: 'Keep a layer of air and foam between the drive and the body.',
  };
  return [about(judged, 'hot-case', 'caution', words)];
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
