import { isLogarithmic } from '../../quantity/quantile.js';

/** Steps from the nominal value to either end of the range. */
const stepsToEnd = 12;

/** Evaluations spent on closing in; each second one halves what is left. */
const refinements = 28;

/** How closely the flip is known, as a share of a step. */
const closeness = 1e-4;

/** A change of the output that stays within so little of a step is a jump when it is this share of all of it. */
const jumpFraction = 0.05;

/** The input's value at which another candidate leads. */
export interface FlipValue {
  /** SI; on the far side of the flip, so that a rerun at this value shows another leader. */
  value: number;
  /** The flip lies between these, SI; one of them is the value. */
  bracket: { low: number; high: number };
  /** What the output is at the flip value: below 0 where it was above, or the other way round. */
  leadScore: number;
  /** The output jumps there, as where a hard limit begins to fail; otherwise it passes through 0. */
  jumps: boolean;
  /** Evaluated once more at the end: the sign has changed. */
  confirmed: boolean;
}

/**
 * The value nearest to nominal, within a range, at which an output changes its sign; null when it does not, or has no
 * sign at nominal because it does not exist there. Steps outward on both sides, in the logarithm for ranges of a ratio
 * of 3 or more, then closes in on the first change found. Two changes within one of its steps are missed.
 * @param lead score of the leader less that of the best other; NaN where it does not exist, which is no change
 * @param nominal the input's nominal value
 * @param range plausible values of the input; nominal may lie outside
 */
export function flipValue(
  lead: (value: number) => number,
  nominal: number,
  range: { low: number; high: number },
): FlipValue | null {
  const atNominal = lead(nominal);
  if (Number.isNaN(atNominal)) return null;
  if (atNominal === 0) {
    return {
      value: nominal,
      bracket: { low: nominal, high: nominal },
      leadScore: 0,
      jumps: false,
      confirmed: true,
    };
  }
  const scale = isLogarithmic(Math.min(range.low, nominal), Math.max(range.high, nominal))
    ? { into: Math.log, back: Math.exp }
    : { into: (value: number) => value, back: (value: number) => value };
  const start = scale.into(nominal);
  const signed = (place: number) => {
    const found = lead(scale.back(place));
    return atNominal < 0 ? -found : found;
  };
  const ends = [range.low, range.high].map((end) => scale.into(end) - start).filter((way) => way !== 0);
  const flips = nearestBrackets(signed, start, Math.abs(atNominal), ends).map((bracket) =>
    closeIn(signed, bracket),
  );
  const nearest = flips.sort((a, b) => Math.abs(a.flipped - start) - Math.abs(b.flipped - start))[0];
  if (nearest === undefined) return null;
  const value = scale.back(nearest.flipped);
  const keptValue = scale.back(nearest.kept);
  const leadScore = lead(value);
  return {
    value,
    bracket: { low: Math.min(value, keptValue), high: Math.max(value, keptValue) },
    leadScore,
    jumps: nearest.jumps,
    confirmed: leadScore * atNominal < 0,
  };
}

/** Two places between which the sign changes, with the outputs there. */
interface Bracket {
  kept: number;
  keptLead: number;
  flipped: number;
  flippedLead: number;
}

/**
 * First sign change on each side. The way to the farther end is not walked beyond the step that found a change on the
 * other side: a change there could not be nearer.
 * @param ends signed ways from the start to the ends of the range
 */
function nearestBrackets(
  signed: (place: number) => number,
  start: number,
  startLead: number,
  ends: number[],
): Bracket[] {
  const found: Bracket[] = [];
  const walks = ends.map((way) => ({ way, kept: start, keptLead: startLead }));
  const stepSize = Math.max(0, ...ends.map(Math.abs)) / stepsToEnd;
  for (let step = 1; step <= stepsToEnd && found.length === 0; step++) {
    for (const walk of walks) {
      const last = Math.abs(walk.kept - start);
      const way = Math.min(Math.abs(walk.way), step * stepSize);
      if (!(way > last)) continue;
      const place = start + Math.sign(walk.way) * way;
      const leadThere = signed(place);
      if (leadThere < 0) {
        found.push({ kept: walk.kept, keptLead: walk.keptLead, flipped: place, flippedLead: leadThere });
      } else if (leadThere >= 0) {
        walk.kept = place;
        walk.keptLead = leadThere;
      }
    }
  }
  return found;
}

/** Narrows a bracket until its ends are close: straight-line guesses and halvings in turn. */
function closeIn(signed: (place: number) => number, bracket: Bracket): Bracket & { jumps: boolean } {
  let { kept, keptLead, flipped, flippedLead } = bracket;
  const enough = closeness * Math.abs(flipped - kept);
  for (let i = 0; i < refinements && Math.abs(flipped - kept) > enough; i++) {
    const guess = kept + ((flipped - kept) * keptLead) / (keptLead - flippedLead);
    // A guess is pushed a little, to the far side of the end it lies nearer to, so that both ends close in.
    const push = Math.sign(flipped - kept) * enough * 0.4;
    const beyond = guess + (Math.abs(guess - kept) < Math.abs(guess - flipped) ? push : -push);
    const inside = (beyond - kept) * (beyond - flipped) < 0;
    const place = i % 2 === 0 && inside ? beyond : (kept + flipped) / 2;
    const leadThere = signed(place);
    if (leadThere < 0) {
      flipped = place;
      flippedLead = leadThere;
    } else if (leadThere >= 0) {
      kept = place;
      keptLead = leadThere;
    } else break;
  }
  const jumps = keptLead - flippedLead > jumpFraction * (bracket.keptLead - bracket.flippedLead);
  return { kept, keptLead, flipped, flippedLead, jumps };
}
