import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { joules, metresPerSecond, newtons, shortTime } from '../figures.js';
import { about } from './caution.js';
import { severeForceN } from './contact.js';

const carry = 'a stop, a latch or a tether that carries the feature alone';

/** Cautions about what happens when the power is cut: falling, creeping, trusting a locking gear. */
export function fallingCautions(judged: Judged): Caution[] {
  const { powerCut } = judged.run.nominal;
  if (!powerCut.stays) return [falls(judged)];
  const worn = judged.study.carrier.worn;
  if (!powerCut.staysWhenShaken && worn) return [creeps(judged)];
  return [notABrake(judged)];
}

function falls(judged: Judged): Caution {
  const { powerCut } = judged.run.nominal;
  const force = powerCut.tipForceN ?? 0;
  const facts: string[] = [];
  if (powerCut.fallS !== null) facts.push(`in ${shortTime(powerCut.fallS)}`);
  if (powerCut.tipSpeedMPerS !== null) facts.push(`at ${metresPerSecond(powerCut.tipSpeedMPerS)}`);
  if (powerCut.impactEnergyJ !== null) facts.push(`with ${joules(powerCut.impactEnergyJ)}`);
  const fall = facts.join(', ');
  const words = {
    figure: [
      powerCut.tipSpeedMPerS === null ? '' : metresPerSecond(powerCut.tipSpeedMPerS),
      powerCut.impactEnergyJ === null ? '' : joules(powerCut.impactEnergyJ),
    ]
      .filter((part) => part !== '')
      .join(', '),
    text: `Falls when the power is cut${fall === '' ? '' : `: at the lower stop ${fall}`}${powerCut.tipForceN === null ? '' : `, about ${newtons(force)} on whatever stops the tip`}. ${shortedLeads(judged)}`,
    action: `Fit ${carry}, and warn before the pack is empty.`,
  };
  return about(judged, 'falls', force >= severeForceN ? 'severe' : 'caution', words);
}

function shortedLeads(judged: Judged): string {
  const { shorted } = judged.run.nominal.powerCut;
  if (shorted.stays) return 'With the motor leads shorted it would stay.';
  if (shorted.fallS === null) return '';
  return `With the motor leads shorted it would take ${shortTime(shorted.fallS)}.`;
}

function creeps(judged: Judged): Caution {
  return about(judged, 'creeps-when-shaken', 'caution', {
    figure: 'holds at rest only',
    text: 'Without power it stays while nobody moves, but creeps down under the bounce of the carrier.',
    action: `Keep the drive powered at holds, or fit ${carry}.`,
  });
}

function notABrake(judged: Judged): Caution {
  return about(judged, 'locking-not-a-brake', 'note', {
    figure: 'locks by friction',
    text: 'Locking is not a brake: it wears in, and grease, warmth and shaking loosen it.',
    action: `Where a fall can hurt, fit ${carry}, and test the hold again every season.`,
  });
}
