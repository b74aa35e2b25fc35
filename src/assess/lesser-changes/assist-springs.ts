import type { CandidateRun } from '../../simulate/outcome.js';
import type { AssistSpring } from '../../study/feature.js';
import { assumedBurden, withSpringMass } from './burdens.js';
import type { ChangeBurden, ChangeSetting, LesserChangeId } from './lesser-change.js';
import { type Attempt, type ChangeKind, proposal, type Setup } from './proposal.js';
import { SpringBench } from './spring-bench.js';
import { springSideEffects } from './spring-effects.js';
import { balancingCoil, coilFamily, linearFamily } from './spring-families.js';
import { bestSpring, type FoundSpring } from './spring-search.js';
import * as say from './spring-words.js';
import { lengthText, placeText, rateText } from './words.js';

/** A spring that saves less of the drives' draw than this is not worth hanging. */
const leastSavedFraction = 0.01;

/** A carrier that leans less than this stands upright, and rates closer than this are the same. */
const uprightRad = 1e-9;
const sameRateFraction = 0.05;

/** A torsion spring on a hinge, a long spring along a rail. */
export const assistSpring: ChangeKind = {
  id: 'assist-spring',
  family: 'spring',
  propose(setup) {
    const bench = new SpringBench(setup);
    if (!(bench.largestGravity > 0)) return { reason: say.nothingToCarry() };
    const found = bestSpring(bench, linearFamily(bench));
    return worthwhile(setup, bench, found, (spring) => {
      const isHinge = setup.study.feature.kind === 'hinge';
      return proposal({
        parts: ['assist-spring'],
        title: say.linearTitle(isHinge),
        actions: say.linearActions(bench, spring),
        settings: linearSettings(spring, isHinge),
        burden: burdenOf('assist-spring', bench, spring, setup.study.feature.featureCount),
        setup: withSpring(setup, spring),
        corrected: (run) => withEndlessMargin(bench, spring, run),
        sideEffects: (before, after) => springSideEffects(bench, spring, before, after),
      });
    });
  },
};

/** A coil spring between an anchor above the hinge and a point along the feature. */
export const anchoredCoil: ChangeKind = {
  id: 'anchored-coil',
  family: 'spring',
  propose(setup) {
    const { feature } = setup.study;
    if (feature.kind !== 'hinge') return { reason: say.noHinge() };
    const bench = new SpringBench(setup);
    if (!(bench.largestGravity > 0)) return { reason: say.nothingToCarry() };
    const found = exactWhereClose(
      bench,
      bestSpring(bench, coilFamily(bench, feature.tipDistanceM)),
      feature.tipDistanceM,
    );
    return worthwhile(setup, bench, found, (spring) =>
      proposal({
        parts: ['anchored-coil'],
        title: say.coilTitle(),
        actions: say.coilActions(bench, spring),
        settings: coilSettings(spring),
        burden: burdenOf('anchored-coil', bench, spring, feature.featureCount),
        setup: withSpring(setup, spring),
        corrected: (run) => withEndlessMargin(bench, spring, run),
        sideEffects: (before, after) => springSideEffects(bench, spring, before, after),
      }),
    );
  },
};

/** The search stops a little beside the rate that balances at every angle; a maker then aims for that one. */
function exactWhereClose(
  bench: SpringBench,
  found: FoundSpring | null,
  tipDistanceM: number,
): FoundSpring | null {
  const { load } = bench.model;
  if (found === null || Math.abs(load.leanRad) > uprightRad) return found;
  const exact = balancingCoil(load, tipDistanceM);
  const apart = Math.abs(exact.rateNPerM - found.spring.rateNPerM);
  if (apart > sameRateFraction * exact.rateNPerM || !bench.allows(exact)) return found;
  return { spring: exact, drawW: bench.drawW(exact) };
}

function worthwhile(
  { study }: Setup,
  bench: SpringBench,
  found: FoundSpring | null,
  propose: (spring: AssistSpring) => Attempt,
): Attempt {
  if (found === null) return { reason: say.noSpringAllowed() };
  const bareW = bench.drawW(study.feature.spring);
  if (!(bareW - found.drawW > leastSavedFraction * bareW)) return { reason: say.savesNothing() };
  return propose(found.spring);
}

/** Tightest on the lower stop, where a spring must not be overworked either. */
function burdenOf(
  id: LesserChangeId,
  bench: SpringBench,
  spring: AssistSpring,
  features: number,
): ChangeBurden {
  const tightest = Math.min(bench.lowerStop, bench.model.range.lowest);
  return withSpringMass(assumedBurden(id, features), say.storedEnergyJ(spring, tightest), features);
}

/** A drive that has nothing to bear has a margin without end; it is written as this many times, so that it passes. */
const endlessMargin = 1000;

function withEndlessMargin(bench: SpringBench, spring: AssistSpring, run: CandidateRun): CandidateRun {
  if (!bench.leavesNothing(spring)) return run;
  return { ...run, nominal: { ...run.nominal, torqueMarginRatio: endlessMargin } };
}

function withSpring({ study, candidate }: Setup, spring: AssistSpring): Setup {
  return { study: { ...study, feature: { ...study.feature, spring } }, candidate };
}

function linearSettings(spring: AssistSpring, isHinge: boolean): ChangeSetting[] {
  const { stiffness, freePosition } = spring;
  return [
    {
      field: 'spring.stiffness',
      value: stiffness,
      unit: isHinge ? 'N·m/rad' : 'N/m',
      shown: say.stiffnessText(stiffness, isHinge),
    },
    {
      field: 'spring.free_angle',
      value: freePosition,
      unit: isHinge ? 'rad' : 'm',
      shown: placeText(freePosition, isHinge),
    },
  ];
}

function coilSettings(spring: AssistSpring): ChangeSetting[] {
  const length = (field: string, lengthM: number): ChangeSetting => ({
    field,
    value: lengthM,
    unit: 'm',
    shown: lengthText(lengthM),
  });
  return [
    { field: 'spring.rate', value: spring.rateNPerM, unit: 'N/m', shown: rateText(spring.rateNPerM) },
    length('spring.frame_arm', spring.frameArmM),
    length('spring.feature_arm', spring.featureArmM),
    length('spring.free_length', spring.freeLengthM),
  ];
}
