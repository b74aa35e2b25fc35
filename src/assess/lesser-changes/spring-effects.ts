import { weightedMean } from 'simple-statistics';
import { staticEffort } from '../../physics/load.js';
import { staysUnpowered } from '../../simulate/power-cut.js';
import type { AssistSpring } from '../../study/feature.js';
import type { Cue } from '../../study/show.js';
import { joules, percent, plain, watts } from '../figures.js';
import { evenPositions, withSpringOn } from './feature-efforts.js';
import { powerCutChange } from './power-cut-words.js';
import type { Tried } from './proposal.js';
import { rateErrorFraction, type SpringBench, scaled } from './spring-bench.js';
import { holdDrawW } from './spring-draw.js';
import { storedEnergyJ } from './spring-words.js';
import { effortText, placeText } from './words.js';

/** Points between the lower stop and the highest cue position at which the balance is looked at. */
const pointCount = 81;

/** A load smaller than this share of the largest is balance, not overbalance. */
const balancedFraction = 0.005;

/** Everything that follows from hanging a spring, beside what it saves. */
export function springSideEffects(
  bench: SpringBench,
  spring: AssistSpring,
  before: Tried,
  after: Tried,
): string[] {
  return [
    ...powerCutChange(before, after),
    ...overbalance(bench, spring, after.study.carrier.worn),
    ...onTheStop(bench, spring),
    ...missedRate(bench, spring, after.study.show.loop),
    stored(bench, spring),
    broken(before),
    ...replaced(before),
  ];
}

/** Where the spring is stronger than the load, by how much, and what the unpowered drive makes of it. */
function overbalance(bench: SpringBench, spring: AssistSpring, worn: boolean): string[] {
  const model = withSpringOn(bench.model, spring);
  const { isHinge } = model.load;
  const positions = evenPositions(bench.lowerStop, model.range.highest, pointCount);
  const effortAt = (position: number) => staticEffort(model.load, position);
  const largest = Math.max(
    ...positions.map((position) => Math.abs(staticEffort(bench.model.load, position))),
  );
  const over = positions.filter((position) => effortAt(position) < -balancedFraction * largest);
  if (over.length === 0) return [];
  const worst = over.reduce((a, b) => (effortAt(b) < effortAt(a) ? b : a));
  const [low, high] = [placeText(Math.min(...over), isHinge), placeText(Math.max(...over), isHinge)];
  const where = low === high ? `At ${low}` : `Between ${low} and ${high}`;
  const most = effortText(-effortAt(worst), isHinge);
  const free = staysUnpowered(model, worst, worn)
    ? 'without power the friction of the drive holds it there'
    : 'without power it rises there';
  return [`${where} the spring outweighs the feature by up to ${most}: the drive has to pull down; ${free}.`];
}

function onTheStop(bench: SpringBench, spring: AssistSpring): string[] {
  const { load } = bench.model;
  const effort = staticEffort(withSpringOn(bench.model, spring).load, bench.lowerStop);
  const place = placeText(bench.lowerStop, load.isHinge);
  if (effort <= 1.05 * load.frictionEffort) {
    return [
      `It only just comes down onto its lower stop at ${place} by itself: a joint that grows stiffer can keep it off.`,
    ];
  }
  return [`It still lies on its lower stop at ${place} with ${effortText(effort, load.isHinge)}.`];
}

/** Holds with a rate that is missed by a little: the worse of the two ways. */
function missedRate(bench: SpringBench, spring: AssistSpring, loop: readonly Cue[]): string[] {
  const holds = loop.filter(({ action }) => action === 'hold');
  if (holds.length === 0 || bench.model.unpoweredHold) return [];
  const powersW = [1 - rateErrorFraction, 1, 1 + rateErrorFraction].map((factor) =>
    meanHoldW(bench, scaled(spring, factor), holds),
  );
  const worseW = Math.max(powersW[0]!, powersW[2]!);
  if (worseW - powersW[1]! < 0.1) return [];
  return [
    `With a rate ${percent(rateErrorFraction)} off, holding takes ${watts(worseW)} instead of ${watts(powersW[1]!)}, idle electronics apart.`,
  ];
}

function meanHoldW(bench: SpringBench, spring: AssistSpring, holds: readonly Cue[]): number {
  const model = withSpringOn(bench.model, spring);
  return weightedMean(
    holds.map((cue) => holdDrawW(model, cue.fromPosition)),
    holds.map((cue) => cue.durationS),
  );
}

function stored(bench: SpringBench, spring: AssistSpring): string {
  const energyJ = storedEnergyJ(spring, bench.lowerStop);
  return `On the lower stop the spring stores ${joules(energyJ)}: block the feature before you unhook it or take the drive off.`;
}

function broken({ run }: Tried): string {
  const margin = run.nominal.torqueMarginRatio;
  const bare = margin === null ? '' : `, with a torque margin of ${plain(margin)}`;
  return `If it breaks or slips, the drive carries the feature as it does today${bare}.`;
}

function replaced({ study }: Tried): string[] {
  return study.feature.spring.form === 'none' ? [] : ['It takes the place of the spring that is there now.'];
}
