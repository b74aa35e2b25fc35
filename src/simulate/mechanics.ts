import type { DriveSheet } from '../drives/sheet.js';
import { standardGravityMPerS2 } from '../physics/constants.js';
import type { CouplingParameters } from '../physics/linkage.js';
import {
  bodyInertia,
  hingeGustEffort,
  type LoadParameters,
  panelDragCoefficient,
  slideDragCoefficient,
  slideGustEffort,
  weightN,
} from '../physics/load.js';
import type { Activity, Feature } from '../study/feature.js';
import type { Study } from '../study/study.js';
import type { StopName } from './outcome.js';

/**
 * Bounce of the carrier as a share of gravity, by activity (from experience; the walking figure agrees with
 * measured ground reaction peaks of about 1.2 body weights rounded up for a load on a harness).
 * @source keller-1996
 */
export const bounceFractions: Record<Activity, number> = {
  stand: 0,
  walk: 0.3,
  brisk: 0.5,
  dance: 1.2,
  jump: 2,
};

/** A jump is over at once: what heats the drive over minutes is at most the bounce of a dance. */
export const heatBounceFraction = (activity: Activity): number =>
  Math.min(bounceFractions[activity], bounceFractions.dance);

/** Lowest and highest position of the whole cue list. */
export interface CueRange {
  lowest: number;
  highest: number;
}

/** Range over which the drive has to work: from the lowest to the highest cue position. */
export function cueRange(study: Study): CueRange {
  const positions = [...study.show.leadIn, ...study.show.loop].flatMap((cue) => [
    cue.fromPosition,
    cue.toPosition,
  ]);
  return { lowest: Math.min(...positions), highest: Math.max(...positions) };
}

/** Positions of the mechanical stops. */
export const stopsOf = (feature: Feature): Record<StopName, number> => ({
  lower: feature.lowerStopPosition,
  upper: feature.upperStopPosition,
});

/** Mass per feature that a riding drive adds, and what it weighs. Blank masses count as nothing here. */
function ridingMassKg(sheet: DriveSheet): number {
  if (!sheet.ridesOnFeature) return 0;
  return sheet.drivesPerFeatureCount * ((sheet.massKg ?? 0) + (sheet.mountMassKg ?? 0));
}

/** Moving mass of one feature with what rides on it; null when something rides whose mass is blank. */
export function featureMassKg(study: Study, sheet: DriveSheet): number | null {
  if (sheet.ridesOnFeature && sheet.massKg === null) return null;
  return study.feature.massKg + ridingMassKg(sheet);
}

/** Mass × balance distance of one hinged feature, from a scale under the tip where there is one. (M1) */
export const firstMomentKgM = ({ tipScaleKg, tipDistanceM, massKg, balanceDistanceM }: Feature): number =>
  tipScaleKg === null ? massKg * balanceDistanceM : tipScaleKg * tipDistanceM;

/** Inertia of one hinged feature by its shape, whether or not a better figure is given. (M1) */
export const guessedInertiaKgM2 = (feature: Feature): number =>
  bodyInertia(feature.shape, feature.massKg, firstMomentKgM(feature) / feature.massKg, feature.tipDistanceM);

/** Inertia of one hinged feature without what rides on it: as given, else by its shape. (M1) */
export const bareInertiaKgM2 = (feature: Feature): number =>
  feature.inertiaKgM2 ?? guessedInertiaKgM2(feature);

/** The feature as a load on its drive, with whatever part of the drive rides on it. (M1, M2) */
export function loadOf(study: Study, sheet: DriveSheet): LoadParameters {
  return study.feature.kind === 'slide' ? slideLoad(study, sheet) : hingeLoad(study, sheet);
}

function slideLoad({ feature, carrier, air }: Study, sheet: DriveSheet): LoadParameters {
  const massKg = feature.massKg + ridingMassKg(sheet);
  return {
    isHinge: false,
    gravityEffort: weightN(massKg) * Math.sin(feature.inclineRad),
    leanRad: 0,
    inertia: massKg,
    dragCoefficient: slideDragCoefficient(feature.panelAreaM2),
    frictionEffort: feature.frictionEffort,
    gustEffort: slideGustEffort(feature.panelAreaM2, air.gustMPerS),
    bounceFraction: bounceFractions[carrier.activity],
    lengthM: 1,
    spring: feature.spring,
  };
}

function hingeLoad({ feature, carrier, air }: Study, sheet: DriveSheet): LoadParameters {
  const ridingKg = ridingMassKg(sheet);
  const rideM = sheet.rideDistanceM ?? feature.balanceDistanceM;
  const { tipDistanceM } = feature;
  const momentKgM = firstMomentKgM(feature) + ridingKg * rideM;
  return {
    isHinge: true,
    gravityEffort: momentKgM * standardGravityMPerS2 * Math.cos(feature.axisTiltRad),
    leanRad: carrier.leanRad,
    inertia: bareInertiaKgM2(feature) + ridingKg * rideM * rideM,
    dragCoefficient: panelDragCoefficient(feature.panelAreaM2, tipDistanceM),
    frictionEffort: feature.frictionEffort,
    gustEffort: hingeGustEffort(feature.panelAreaM2, tipDistanceM, air.gustMPerS),
    bounceFraction: bounceFractions[carrier.activity],
    lengthM: tipDistanceM,
    spring: feature.spring,
  };
}

/** Pivots of a strut, given or proposed. */
export interface StrutPivots {
  frameArmM: number;
  featureArmM: number;
  levelAngleRad: number;
  side: 'push' | 'pull';
}

/** Pivots as the sheet gives them; null when any is blank, or the coupling is no strut. */
export function givenPivots(sheet: DriveSheet): StrutPivots | null {
  if (sheet.coupling !== 'strut') return null;
  const { strutFrameArmM, strutFeatureArmM, strutLevelAngleRad } = sheet;
  if (strutFrameArmM === null || strutFeatureArmM === null || strutLevelAngleRad === null) return null;
  return {
    frameArmM: strutFrameArmM,
    featureArmM: strutFeatureArmM,
    levelAngleRad: strutLevelAngleRad,
    side: sheet.strutSide,
  };
}

/** How the drive is joined to the feature. (M3, M4) */
export function couplingOf(sheet: DriveSheet, pivots: StrutPivots | null): CouplingParameters {
  const ratioByKind = {
    direct: 1,
    geared: sheet.couplingRatio ?? 1,
    spool: 1 / (sheet.spoolRadiusM ?? 1),
    strut: 1,
  };
  return {
    kind: sheet.coupling,
    fixedRatio: ratioByKind[sheet.coupling],
    efficiency: sheet.couplingEfficiency,
    driveCount: sheet.drivesPerFeatureCount,
    frameArmM: pivots?.frameArmM ?? 0,
    featureArmM: pivots?.featureArmM ?? 0,
    levelAngleRad: pivots?.levelAngleRad ?? 0,
    sideSign: pivots?.side === 'pull' ? -1 : 1,
  };
}
