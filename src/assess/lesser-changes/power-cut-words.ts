import { decidingPowerCut } from '../../simulate/outcome.js';
import { joules, metresPerSecond, shortTime } from '../figures.js';
import type { Tried } from './proposal.js';

/** What a power cut does after a change that did something else before; nothing when it does the same. */
export function powerCutChange(before: Tried, after: Tried): string[] {
  const [then, now] = [whatHappens(before), whatHappens(after)];
  return then === now ? [] : [`Without power it ${now}; today it ${then}.`];
}

function whatHappens({ run }: Tried): string {
  const { stays, fallS, tipSpeedMPerS, impactEnergyJ } = decidingPowerCut(run.nominal);
  if (stays) return 'does not fall';
  if (fallS === null || tipSpeedMPerS === null || impactEnergyJ === null)
    return 'gives way but does not fall freely';
  return `falls in ${shortTime(fallS)} and lands at ${metresPerSecond(tipSpeedMPerS)} with ${joules(impactEnergyJ)}`;
}
