import { inDraws } from '../certainty/sureness.js';
import { criterionNames } from '../criterion-words.js';
import { percent } from '../figures.js';
import { fieldWords, labelsOf } from './labels.js';
import { blankFields, openContenders, openLimits } from './open-limits.js';
import { measured } from './sentence.js';
import { leastPass, type VerdictParts } from './verdict-parts.js';

/** Most flips that are told. */
const toldFlips = 3;

/** At an end of an input the leader is ahead in fewer draws than this: then it is no longer the leader there. */
const behindBelow = 0.4;

/** A worth of measuring too small to mention. */
const visibleWorth = 0.002;

/** Chance to lead from which somebody who is not judged is worth a word. */
const contendingOpen = 0.1;

/** Smaller differences between weights do not show. */
const visibleWeight = 0.005;

/** What would overturn the answer, the likeliest first: values of inputs, a measurement, other weights. */
export function overturnedBy(parts: VerdictParts): string[] {
  const { sensitivity, leader, certainty } = parts;
  // Where not even the leader passes, who is ahead among those that fail is no answer to overturn.
  if ((certainty.candidates[leader.id]!.passProbability ?? 1) < leastPass) return blanks(parts);
  // Found with every figure as it stands, which is another question where the draws have another leader.
  const asItStands = sensitivity !== null && sensitivity.leader === leader.id;
  const values = asItStands ? flips(parts) : [];
  return [
    ...blanks(parts),
    ...(values.length > 0 ? values : ends(parts)),
    ...measurement(parts),
    ...(asItStands ? weights(parts) : []),
  ];
}

/** Whoever is not judged may lead once the blank is filled in. */
function blanks(parts: VerdictParts): string[] {
  const label = labelsOf(parts.ranked);
  return openContenders(parts)
    .filter(({ leadProbability }) => leadProbability >= contendingOpen)
    .map(
      ({ candidate, leadProbability }) =>
        `If ${label(candidate.id)} keeps its limit of ${openLimits(candidate)}, which waits for a blank (${blankFields(candidate)}), it leads in ${inDraws(leadProbability)} of the draws.`,
    );
}

/** Values at which the order turns; where most draws lie beyond, the draws have spoken already. */
function flips({ ranked, sensitivity }: VerdictParts): string[] {
  const label = labelsOf(ranked);
  const told = (sensitivity?.flips ?? []).filter(({ beyondProbability }) => beyondProbability <= 0.5);
  return told.slice(0, toldFlips).map((flip) => {
    const owner = flip.owner === null ? '' : ` of ${label(flip.owner)}`;
    const way = flip.value > flip.nominal ? 'or more' : 'or less';
    return `If the ${fieldWords(flip.field)}${owner} is ${flip.shown} ${way} instead of ${flip.nominalShown}, ${label(flip.leaderBeyond)} leads; this holds in ${inDraws(flip.beyondProbability)} of the draws.`;
  });
}

/** Inputs in whose lowest or highest tenth another one is ahead. */
function ends({ ranked, measurables, against, leader }: VerdictParts): string[] {
  if (against === null) return [];
  const label = labelsOf(ranked);
  const found = measurables.flatMap(({ knowable, ends: both }) =>
    both
      .filter(({ aheadProbability }) => aheadProbability < behindBelow)
      .map((end) => ({ ...end, named: measured({ ranked }, knowable) })),
  );
  return found
    .sort((a, b) => a.aheadProbability - b.aheadProbability)
    .slice(0, toldFlips)
    .map(
      ({ named, shown, below, aheadProbability }) =>
        `Where ${named} is ${shown} or ${below ? 'less' : 'more'}, ${label(leader.id)} is ahead of ${label(against)} in only ${inDraws(aheadProbability)} of the draws.`,
    );
}

function measurement(parts: VerdictParts): string[] {
  const first = parts.measurables.find(({ worth }) => worth.measurable)?.worth;
  if (first === undefined || first.worthScore < visibleWorth) return [];
  return [
    `Measuring ${measured(parts, first)} would change the choice in ${inDraws(first.changedProbability)} of the draws.`,
  ];
}

function weights({ ranked, sensitivity, study }: VerdictParts): string[] {
  const change = sensitivity?.weightChange ?? null;
  if (change === null) return [];
  const total = study.criteria.reduce((sum, { weightScore }) => sum + weightScore, 0);
  const moved = study.criteria
    .filter(({ weightScore }) => weightScore > 0)
    .map(({ id, weightScore }) => ({ id, before: weightScore / total, after: change.weights[id] ?? 0 }))
    .filter(({ before, after }) => Math.abs(after - before) > visibleWeight)
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before))
    .slice(0, 2);
  if (moved.length === 0) return [];
  const texts = moved.map(
    ({ id, before, after }) =>
      `${criterionNames[id]} counted ${percent(after)} instead of ${percent(before)}`,
  );
  return [`If ${texts.join(' and ')}, ${labelsOf(ranked)(change.leader)} would lead.`];
}
