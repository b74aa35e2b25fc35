import { driveEffortAtRest, speedRatio } from '../../physics/linkage.js';
import type { CandidateModel } from '../../simulate/candidate-model.js';
import type { AssistSpring } from '../../study/feature.js';

/** The same drive with another spring on its feature, in place of the one that may be there. */
export const withSpringOn = (model: CandidateModel, spring: AssistSpring): CandidateModel => ({
  ...model,
  load: { ...model.load, spring },
});

/** Effort of one drive per effort of the feature, magnitude; losses left out. (M3) */
export const driveShareAt = ({ coupling }: CandidateModel, position: number): number =>
  Math.abs(driveEffortAtRest(1, speedRatio(coupling, position), coupling));

/** So many positions evenly over an interval, both ends included. */
export const evenPositions = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
