import { decidingPowerCut } from '../../simulate/outcome.js';
import { landingGiveM } from '../../simulate/power-cut.js';
import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { joules, metresPerSecond, newtons, shortTime } from '../figures.js';
import { severeForceN } from '../thresholds.js';
import { goesTo, yieldsTo } from '../unpowered-words.js';
import { about } from './caution.js';
import { drawnSeverity, inSoMany, shareOfDraws } from './drawn-share.js';

const carry = 'a stop, a latch or a tether that carries the feature alone';

/** Cautions about what happens when the power is cut: falling, creeping, trusting a gear that stays. */
export function fallingCautions(judged: Judged): Caution[] {
  const powerCut = decidingPowerCut(judged.run.nominal);
  if (powerCut.fallS !== null) return [falls(judged)];
  const share = shareOfDraws(judged, 'fallS', (fallS) => !Number.isNaN(fallS));
  if (drawnSeverity(false, share) !== null) return [mayFall(judged, share)];
  if (!powerCut.stays) return [sinks(judged)];
  if (!powerCut.staysWhenShaken && judged.study.carrier.worn) return [creeps(judged)];
  return [locksAsCarried(judged) ? notABrake(judged) : staysByFriction(judged)];
}

function falls(judged: Judged): Caution {
  const { fallS, tipSpeedMPerS, impactEnergyJ, tipForceN, towards } = decidingPowerCut(judged.run.nominal);
  const { kind } = judged.study.feature;
  const speed = tipSpeedMPerS === null ? [] : [metresPerSecond(tipSpeedMPerS)];
  const energy = impactEnergyJ === null ? [] : [joules(impactEnergyJ)];
  const landing = [
    `after ${shortTime(fallS ?? 0)}`,
    ...speed.map((text) => `at ${text}`),
    ...energy.map((text) => `with ${text}`),
  ].join(', ');
  const force =
    tipForceN === null
      ? ''
      : `, about ${newtons(tipForceN)} on whatever stops ${kind === 'hinge' ? 'the tip' : 'it'}`;
  const does = goesTo(towards, kind).replace(/^./, (letter) => letter.toUpperCase());
  const stop = towards === 'upper' ? 'it' : 'the lower stop';
  const words = {
    figure: [...speed, ...energy].join(', '),
    text: `${does} when the power is cut: it meets ${stop} ${landing}${force}. ${shortedLeads(judged)}`,
    action: `Fit ${carry}, and warn before the pack is empty.`,
  };
  const isHard = (tipForceN ?? 0) >= severeForceN;
  return about(judged, 'falls', drawnSeverity(isHard, hardFallShare(judged)) ?? 'caution', words);
}

/** Share of draws in which it falls so hard that it would be severe. */
const hardFallShare = (judged: Judged) =>
  shareOfDraws(judged, 'fallEnergyJ', (energyJ) => energyJ / landingGiveM >= severeForceN);

/** It does not fall by the nominal figures, but it does in the draws. */
function mayFall(judged: Judged, share: number | null): Caution {
  const { stays, towards } = decidingPowerCut(judged.run.nominal);
  const does = `${goesTo(towards, judged.study.feature.kind)} ${inSoMany(share)}`;
  const words = {
    figure: does,
    text: `When the power is cut it ${does}; by the nominal figures it ${stays ? 'stays' : yieldsTo(towards)}.`,
    action: `Fit ${carry}, and try the power cut with nobody under it.`,
  };
  return about(judged, 'may-fall', drawnSeverity(false, hardFallShare(judged)) ?? 'caution', words);
}

/** Whether its gears alone hold it as it is carried: a worn feature is always shaken. */
function locksAsCarried({ run, study }: Judged): boolean {
  const { locking } = run.nominal;
  return locking === 'holds-when-shaken' || (locking === 'holds-at-rest' && !study.carrier.worn);
}

/** It gives way, but its friction stops it on the way. */
function sinks(judged: Judged): Caution {
  const { towards } = decidingPowerCut(judged.run.nominal);
  return about(judged, 'sinks', 'caution', {
    figure: 'does not hold',
    text: `Does not hold without power: it gives way${
      towards === 'upper' ? ' towards the upper stop' : ''
    }, though friction keeps it from falling freely.`,
    action: `Fit ${carry}, and try the power cut with nobody under it.`,
  });
}

/** What joined leads would do, where they are open. */
function shortedLeads(judged: Judged): string {
  const { shorted, decides } = judged.run.nominal.powerCut;
  if (decides === 'shorted') return 'Its motor leads are shorted when off.';
  if (shorted.stays) return 'With the motor leads shorted it would stay.';
  if (shorted.fallS === null) return '';
  return `With the motor leads shorted it would take ${shortTime(shorted.fallS)}.`;
}

function creeps(judged: Judged): Caution {
  return about(judged, 'creeps-when-shaken', 'caution', {
    figure: 'holds at rest only',
    text: 'Without power it stays while nobody moves, but creeps under the bounce of the carrier.',
    action: `Keep the drive powered at holds, or fit ${carry}.`,
  });
}

function staysByFriction(judged: Judged): Caution {
  return about(judged, 'stays-by-friction', 'note', {
    figure: 'stays by friction',
    text: `${judged.run.nominal.locking === 'does-not-hold' ? 'Without power it' : 'Shaken as it is, its gears do not lock: without power it'} stays by the friction of motor and gears alone; wear, warmth and shaking take that away.`,
    action: `Where a fall can hurt, fit ${carry}.`,
  });
}

function notABrake(judged: Judged): Caution {
  return about(judged, 'locking-not-a-brake', 'note', {
    figure: 'locks by friction',
    text: 'Locking is not a brake: it wears in, and grease, warmth and shaking loosen it.',
    action: `Where a fall can hurt, fit ${carry}, and test the hold again every season.`,
  });
}
