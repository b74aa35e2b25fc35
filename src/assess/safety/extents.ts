import type { Study } from '../../study/study.js';

/** Where the tip is, seen from the hinge; on a slide, seen from the lower end of the rail. */
export interface TipPlace {
  /** Position, rad or m. */
  position: number;
  /** Above the hinge; negative below it. */
  heightM: number;
  /** Sideways from the hinge, to whichever side. */
  reachM: number;
}

/** The room that one feature takes between its stops. */
export interface Extents {
  isHinge: boolean;
  /** Hinge to tip; null on a slide, where nobody has said how long the feature is. */
  tipDistanceM: number | null;
  /** At the upper stop. */
  open: TipPlace;
  /** At the lower stop. */
  folded: TipPlace;
  /** Between the lowest and the highest point of the tip. */
  sweptHeightM: number;
  /** Farthest that the tip gets sideways from the hinge. */
  largestReachM: number;
}

/** Steps in which the sweep is looked at; a hundredth of a turn off the true extreme is nothing. */
const stepCount = 200;

/**
 * Room between the stops, with the carrier's lean as the study gives it and a tilted hinge taken into account.
 * Between the stops and not only where the cue list goes: a fall and a wrong command end at a stop.
 */
export function extentsOf(study: Study): Extents {
  const { feature } = study;
  const { lowerStopPosition: lower, upperStopPosition: upper } = feature;
  const place = feature.kind === 'hinge' ? onHinge(study) : onSlide(study);
  const sweep = Array.from({ length: stepCount + 1 }, (_, step) =>
    place(lower + ((upper - lower) * step) / stepCount),
  );
  const heights = sweep.map(({ heightM }) => heightM);
  return {
    isHinge: feature.kind === 'hinge',
    tipDistanceM: feature.kind === 'hinge' ? feature.tipDistanceM : null,
    open: place(upper),
    folded: place(lower),
    sweptHeightM: Math.max(...heights) - Math.min(...heights),
    largestReachM: Math.max(...sweep.map(({ reachM }) => reachM)),
  };
}

function onHinge({ feature, carrier }: Study): (position: number) => TipPlace {
  const { tipDistanceM, axisTiltRad } = feature;
  return (position) => {
    const heightM = tipDistanceM * Math.sin(position + carrier.leanRad) * Math.cos(axisTiltRad);
    return { position, heightM, reachM: Math.sqrt(Math.max(0, tipDistanceM ** 2 - heightM ** 2)) };
  };
}

function onSlide({ feature }: Study): (position: number) => TipPlace {
  const { inclineRad, lowerStopPosition } = feature;
  return (position) => {
    const travelM = position - lowerStopPosition;
    const reachM = Math.abs(travelM * Math.cos(inclineRad));
    return { position, heightM: travelM * Math.sin(inclineRad), reachM };
  };
}
