import type { PowerCutOutcome, StopName } from '../simulate/outcome.js';
import type { FeatureKind } from '../study/feature.js';

/** What a feature that is let go does on its way to a stop: `falls`, `swings to the upper stop`. */
export const goesTo = (towards: StopName, kind: FeatureKind): string =>
  towards === 'upper' ? `${kind === 'hinge' ? 'swings' : 'rises'} to the upper stop` : 'falls';

/** What a feature that yields without a fall does: `gives way slowly`, and which way if not down. */
export const yieldsTo = (towards: StopName): string =>
  towards === 'upper' ? 'gives way slowly, towards the upper stop' : 'gives way slowly';

/** What a power cut does in one state of the motor leads, in few words. */
export function unpoweredWords({ stays, fallS, towards }: PowerCutOutcome, kind: FeatureKind): string {
  if (stays) return 'stays';
  return fallS === null ? yieldsTo(towards) : goesTo(towards, kind);
}
