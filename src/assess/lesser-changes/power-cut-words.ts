import { decidingPowerCut } from '../../simulate/outcome.js';
import { joules, metresPerSecond, shortTime } from '../figures.js';
import { goesTo } from '../unpowered-words.js';
import type { Tried } from './proposal.js';

/** What a power cut does after a change that did something else before; nothing when it does the same. */
export function powerCutChange(before: Tried, after: Tried): string[] {
  const [then, now] = [whatHappens(before), whatHappens(after)];
  return then === now ? [] : [`Without power it ${now}; today it ${then}.`];
}

function whatHappens({ run, study }: Tried): string {
  const { stays, fallS, tipSpeedMPerS, impactEnergyJ, towards } = decidingPowerCut(run.nominal);
  if (stays) return 'does not fall';
  if (fallS === null || tipSpeedMPerS === null || impactEnergyJ === null)
    return `gives way${towards === 'upper' ? ' towards the upper stop' : ''} but does not fall freely`;
  return `${goesTo(towards, study.feature.kind)} in ${shortTime(fallS)} and lands at ${metresPerSecond(tipSpeedMPerS)} with ${joules(impactEnergyJ)}`;
}
