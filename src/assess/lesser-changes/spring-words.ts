import { springEffort } from '../../physics/load.js';
import { formatValue } from '../../quantity/format.js';
import type { AssistSpring } from '../../study/feature.js';
import { newtons } from '../figures.js';
import type { SpringBench } from './spring-bench.js';
import { effortText, lengthText, placeText, rateText } from './words.js';

/** What is said about a spring; efforts of the feature in N·m on a hinge, N on a rail. */

/** Why there is no spring: nothing to lift. */
export const nothingToCarry = (): string => 'gravity does not pull the feature down anywhere in its range';
/** Why there is no anchored coil on a rail. */
export const noHinge = (): string => 'only a hinge has a place for it';
/** Why there is no spring: each one does harm. */
export const noSpringAllowed = (): string =>
  'no spring leaves the feature on its lower stop and raises no peak effort';
/** Why there is no spring: it is not worth fitting. */
export const savesNothing = (): string => 'no spring saves a hundredth of what the drive draws';

/** Rate of a spring: N·m/rad on a hinge; N/m on a rail, N/mm from 1 N/mm. */
export const stiffnessText = (stiffness: number, isHinge: boolean): string =>
  isHinge ? formatValue(stiffness, 'N·m/rad') : rateText(stiffness);

const perDegree = Math.PI / 180;

/** Title of the spring whose effort falls evenly as the feature rises. */
export const linearTitle = (isHinge: boolean): string =>
  isHinge ? 'A torsion spring on the hinge' : 'A long spring along the rail';

/** What to buy and how to set it: rate, where it goes slack, what it pushes at both ends of the cues. */
export function linearActions({ model }: SpringBench, spring: AssistSpring): string[] {
  const { isHinge } = model.load;
  const { lowest, highest } = model.range;
  const at = (position: number) =>
    `${effortText(springEffort(spring, position), isHinge)} at ${placeText(position, isHinge)}`;
  const rate = isHinge
    ? `${stiffnessText(spring.stiffness, true)} (${formatValue(spring.stiffness * perDegree, 'N·m')} per degree)`
    : stiffnessText(spring.stiffness, false);
  return [
    `Fit a spring of ${rate} that pushes the feature up.`,
    `Set it so that it would go slack at ${placeText(spring.freePosition, isHinge)}: it then pushes ${at(lowest)} and ${at(highest)}.`,
  ];
}

/** Title of the spring that pulls from an anchor above the hinge. */
export const coilTitle = (): string => 'A coil spring from an anchor above the hinge';

/** Where to hang it, and what the spring must bear; stretch equals the distance from anchor to hook. */
export function coilActions(bench: SpringBench, spring: AssistSpring): string[] {
  const { range } = bench.model;
  const [shortM, longM] = [range.highest, Math.min(range.lowest, bench.lowerStop)].map((position) =>
    stretchM(spring, position),
  ) as [number, number];
  const product = spring.rateNPerM * spring.frameArmM * spring.featureArmM;
  return [
    `Hang a spring of ${rateText(spring.rateNPerM)} between an anchor ${lengthText(spring.frameArmM)} straight above the hinge and a hook ${lengthText(spring.featureArmM)} along the feature.`,
    `Lead its cord over an eyelet at the anchor, the coil behind it, so that it is slack where anchor and hook would meet; it stretches from ${lengthText(shortM)} to ${lengthText(longM)} and pulls up to ${newtons(spring.rateNPerM * longM)}.`,
    `Other lengths do as well when rate × anchor height × hook distance stays ${effortText(product, true)}.`,
  ];
}

/** Energy in a spring where it is stretched or wound from where it is slack to a position. */
export function storedEnergyJ(spring: AssistSpring, position: number): number {
  return spring.form === 'coil'
    ? 0.5 * spring.rateNPerM * stretchM(spring, position) ** 2
    : 0.5 * spring.stiffness * (spring.freePosition - position) ** 2;
}

/** Distance from anchor to hook, by the law of cosines. (M1) */
export function stretchM({ frameArmM: a, featureArmM: b }: AssistSpring, angleRad: number): number {
  return Math.sqrt(a * a + b * b - 2 * a * b * Math.sin(angleRad));
}
