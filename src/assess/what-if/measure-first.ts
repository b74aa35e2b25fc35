import { Sfc32 } from '../../simulate/sampling/sfc32.js';
import { type DrawnStudy, utilitiesOf } from '../certainty/drawn-study.js';
import type { WorthOfMeasuring } from '../certainty.js';
import { tier } from '../choosing/drawn-worths.js';
import { type WorthOfKnowing, worthsOfKnowing } from '../sensitivity/worth-of-knowing.js';
import { inputEnds, meanOver, swingBetween } from './input-ends.js';
import type { Knowable } from './knowable.js';
import { precisionOf } from './precision.js';

/** Worths closer than this do not tell two readings apart. */
const sameWorth = 0.0005;

/** Changes of the lead in the same step are equal: what is measured sooner goes first. */
const sameSwing = 0.02;

/** Something to measure, with what knowing it would do. */
export interface Measurable {
  knowable: Knowable;
  worth: WorthOfMeasuring;
  /** Mean lead of the leader where the value is highest, less that where it is lowest. */
  leadSwingScore: number;
  /** Its lowest and its highest tenth: up to, or from, where, and how often the leader is ahead there. */
  ends: { shown: string; below: boolean; aheadProbability: number }[];
  /** Share of draws at both ends in which each of the two passes. */
  passSwings: { candidate: string; low: number; high: number }[];
}

/**
 * What to measure first: the expected gain of score from knowing each value before choosing, the worthiest first;
 * equal ones by what the value does to the lead.
 * @param pair the leader and the one it is compared with, if any
 */
export function measureFirst(
  all: readonly Knowable[],
  drawn: DrawnStudy,
  pair: readonly string[],
  seed: number,
): Measurable[] {
  const utilities = utilitiesOf(drawn);
  // Whoever never passes is never chosen.
  const choosable = drawn.candidateIds.filter(
    (id, place) => pair.includes(id) || utilities[place]!.some((value) => value > 0),
  );
  const theirs = choosable.map((id) => utilities[drawn.candidateIds.indexOf(id)]!);
  const knowing = (columns: readonly Float64Array[]) =>
    worthsOfKnowing(columns, theirs, new Sfc32(seed, 'permutations'), choosable.indexOf(pair[0]!));
  const worthsIn = (columns: readonly Float64Array[]) => knowing(columns).map(({ gainScore }) => gainScore);
  const worths = knowing(all.map(({ values }) => values));
  const places = pair.map((id) => drawn.candidateIds.indexOf(id));
  const lead = leadOf(utilities, places);
  // A figure of a third candidate cannot move the lead of one of the two over the other.
  const foreign = ({ owner }: Knowable) =>
    owner !== null && drawn.candidateIds.includes(owner) && !pair.includes(owner);
  const found = all.map((knowable, index): Measurable => {
    const ends = inputEnds(knowable.values);
    const worth = worthOf(knowable, worths[index]!);
    if (worth.measurable)
      worth.precision = precisionOf(knowable, ends.sorted, worth.worthScore, seed, worthsIn);
    const ahead = (draw: number) => (lead(draw) > 0 ? 1 : 0);
    const end = (value: number, below: boolean, draws: readonly number[]) => ({
      shown: knowable.show(value),
      below,
      aheadProbability: meanOver(draws, ahead),
    });
    return {
      knowable,
      worth,
      leadSwingScore: foreign(knowable) ? 0 : swingBetween(ends, lead),
      ends: [end(ends.lowValue, true, ends.low), end(ends.highValue, false, ends.high)],
      passSwings: places.map((place, which) => {
        const { tiers } = drawn.limits[place]!;
        const passes = (draw: number) => (tiers[draw] === tier.passes ? 1 : 0);
        return {
          candidate: pair[which]!,
          low: meanOver(ends.low, passes),
          high: meanOver(ends.high, passes),
        };
      }),
    };
  });
  return found.sort(worthiest);
}

/** How far the leader is ahead in a draw; alone, what it is worth. */
function leadOf(utilities: readonly Float64Array[], [first, second]: number[]): (draw: number) => number {
  const own = utilities[first!]!;
  const other = second === undefined ? null : utilities[second]!;
  return (draw) => own[draw]! - (other === null ? 0 : other[draw]!);
}

function worthiest(a: Measurable, b: Measurable): number {
  const worthStep = ({ worth }: Measurable) => Math.round(worth.worthScore / sameWorth);
  const swingStep = ({ leadSwingScore }: Measurable) => Math.round(Math.abs(leadSwingScore) / sameSwing);
  return (
    worthStep(b) - worthStep(a) ||
    swingStep(b) - swingStep(a) ||
    a.worth.minutes - b.worth.minutes ||
    Math.abs(b.leadSwingScore) - Math.abs(a.leadSwingScore)
  );
}

function worthOf(
  { path, field, owner, label, bench }: Knowable,
  { gainScore: worthScore, changedProbability }: WorthOfKnowing,
): WorthOfMeasuring {
  return {
    path,
    field,
    owner,
    label,
    worthScore,
    changedProbability,
    measurable: bench !== null,
    instrument: bench?.instrument ?? '',
    method: bench?.method ?? '',
    minutes: bench?.minutes ?? 0,
    precision: '',
  };
}
