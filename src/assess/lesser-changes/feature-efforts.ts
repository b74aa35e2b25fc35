import type { CouplingParameters } from '../../physics/linkage.js';
import type { LoadParameters } from '../../physics/load.js';
import type { CandidateModel } from '../../simulate/candidate-model.js';
import { holdEffortAt } from '../../simulate/hold.js';
import { type AssistSpring, noSpring } from '../../study/feature.js';

/** A drive that sits on the feature itself: what it must give is the effort of the feature. */
const onFeature: CouplingParameters = {
  kind: 'direct',
  fixedRatio: 1,
  efficiency: 1,
  driveCount: 1,
  frameArmM: 0,
  featureArmM: 0,
  levelAngleRad: 0,
  sideSign: 1,
};

/** A load of one newton or newton metre everywhere. */
const unitLoad = { isHinge: false, gravityEffort: 1, spring: noSpring };

/** The same drive with another spring on its feature, in place of the one that may be there. */
export const withSpringOn = (model: CandidateModel, spring: AssistSpring): CandidateModel => ({
  ...model,
  load: { ...model.load, spring },
});

/** Effort that holds the feature still: gravity less the spring; positive when it must be pushed towards +. (M1, M2) */
export const featureEffortAt = (model: CandidateModel, position: number): number =>
  holdEffortAt({ ...model, coupling: onFeature }, position);

/** The same at many positions. */
export function featureEfforts(model: CandidateModel, positions: readonly number[]): number[] {
  const bare = { ...model, coupling: onFeature };
  return positions.map((position) => holdEffortAt(bare, position));
}

/** Effort of gravity alone. (M1, M2) */
export const gravityAt = (model: CandidateModel, position: number): number =>
  featureEffortAt(withSpringOn(model, noSpring), position);

/** What a spring pushes towards +. (M1, M2) */
export const springEffortAt = (model: CandidateModel, spring: AssistSpring, position: number): number =>
  gravityAt(model, position) - featureEffortAt(withSpringOn(model, spring), position);

/** Effort of one drive per effort of the feature, magnitude; losses left out. (M3) */
export const driveShareAt = (model: CandidateModel, position: number): number =>
  Math.abs(holdEffortAt({ ...model, load: { ...model.load, ...unitLoad } }, position));

/** A load that pulls down with the same effort everywhere; friction as it is. */
export const evenLoad = (model: CandidateModel, effort: number): LoadParameters => ({
  ...model.load,
  ...unitLoad,
  gravityEffort: effort,
});

/** So many positions evenly over an interval, both ends included. */
export const evenPositions = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
