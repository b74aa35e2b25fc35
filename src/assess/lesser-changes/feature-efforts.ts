import { driveEffortAtRest, speedRatio } from '../../physics/linkage.js';
import type { LoadParameters } from '../../physics/load.js';
import type { CandidateModel } from '../../simulate/candidate-model.js';
import { type AssistSpring, noSpring } from '../../study/feature.js';

/** The same drive with another spring on its feature, in place of the one that may be there. */
export const withSpringOn = (model: CandidateModel, spring: AssistSpring): CandidateModel => ({
  ...model,
  load: { ...model.load, spring },
});

/** Effort of one drive per effort of the feature, magnitude; losses left out. (M3) */
export const driveShareAt = ({ coupling }: CandidateModel, position: number): number =>
  Math.abs(driveEffortAtRest(1, speedRatio(coupling, position), coupling));

/** A load that pulls down with the same effort everywhere; friction as it is. */
export const evenLoad = (model: CandidateModel, effort: number): LoadParameters => ({
  ...model.load,
  isHinge: false,
  gravityEffort: effort,
  spring: noSpring,
});

/** So many positions evenly over an interval, both ends included. */
export const evenPositions = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
