import type { TipPlace } from '../../assess/safety/extents.js';
import type { SafetyFigures } from '../../assess/safety/safety-figures.js';
import type { ReportContext } from '../context.js';
import type { Values } from '../template/fill-template.js';
import { current, withReading } from '../words/figures.js';

/** The smaller figures of the safety sheet: room, pushing, lost signal, protection. */
export function furtherValues(context: ReportContext, safety: SafetyFigures): Values {
  const { extents, push, featureCount, onSignalLoss } = safety;
  return {
    feature_count: featureCount === 1 ? '' : context.phrases('sheet-each', { count: String(featureCount) }),
    tip_distance: extents.tipDistanceM === null ? '' : withReading(extents.tipDistanceM, context.units.reach),
    ...roomValues(context, safety),
    push_powered: pushWords(context, push.pushDownN, push.pushUpN),
    push_unpowered: pushWords(context, push.unpoweredPushDownN, push.unpoweredPushUpN),
    signal: context.phrases(`sheet-signal-${onSignalLoss ?? 'unknown'}`),
    protection: protectionWords(context, safety),
  };
}

/** A rail that gets less far to the side stands upright for all who walk past it. */
const uprightM = 0.005;

function roomValues({ phrases, units }: ReportContext, { extents }: SafetyFigures): Values {
  const { open, folded, sweptHeightM, largestReachM, isHinge } = extents;
  const place = ({ heightM, reachM }: TipPlace): string =>
    phrases('sheet-place', {
      height: withReading(Math.abs(heightM), units.reach),
      side: phrases(heightM < 0 ? 'sheet-below' : 'sheet-above'),
      reach: withReading(reachM, units.reach),
    });
  const onRail = (): string => {
    const height = withReading(open.heightM, units.reach);
    return open.reachM < uprightM
      ? phrases('sheet-place-upright-rail', { height })
      : phrases('sheet-place-rail', { height, reach: withReading(open.reachM, units.reach) });
  };
  return {
    open: isHinge ? place(open) : onRail(),
    folded: isHinge ? place(folded) : phrases('sheet-place-rail-end'),
    swept: withReading(sweptHeightM, units.reach),
    reach: isHinge ? withReading(largestReachM, units.reach) : '',
  };
}

function pushWords(
  { phrases, units, assessment }: ReportContext,
  downN: number | null,
  upN: number | null,
): string {
  if (downN === null && upN === null) return phrases('sheet-push-all-locked');
  const force = (value: number | null): string => {
    if (value === null) return phrases('sheet-push-locked');
    return value === 0 ? phrases('sheet-push-none') : withReading(value, units.force);
  };
  const where = assessment.study.feature.kind === 'hinge' ? phrases('at-tip') : '';
  return phrases('sheet-push', { down: force(downN), up: force(upN), where });
}

function protectionWords({ phrases }: ReportContext, { supply }: SafetyFigures): string {
  const named = (value: number | null): string =>
    value === null ? phrases('sheet-protection-none') : current(value);
  return phrases('sheet-protection', {
    fuse: named(supply.fuseRatingA),
    board: named(supply.protectionTripA),
  });
}
