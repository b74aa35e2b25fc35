import type { Ensemble } from '../../simulate/ensemble/ensemble.js';
import type { UncertainInput } from '../../simulate/ensemble/uncertain-inputs.js';
import { DrawPlan } from '../../simulate/sampling/draw-plan.js';
import type { Study } from '../../study/study.js';
import type { GroupTotalEffect } from '../certainty.js';
import { groupEffects, type PairedDraws } from '../sensitivity/total-effects.js';
import { labelsOf } from '../verdict/labels.js';
import type { WhatIf } from './what-if.js';

/** Draws of each of the two sets. (M24) */
const baseDraws = 256;

/** Half of the sixteen dimensions of the even sequence for each of the two sets. */
const halfDimensions = 8;

/**
 * How much of the variance of the lead comes from what is known of the feature, the pack, the loads, the sheets of
 * the two candidates, and from what was guessed. (M24)
 * @param pair the leader, and the one it is compared with
 * @param ensemble null where nothing was measured; else its draws, which agree with the measurements, are used
 */
export function totalEffects(
  study: Study,
  pair: WhatIf,
  ids: readonly string[],
  ensemble: Ensemble | null,
): GroupTotalEffect[] {
  const groups = groupsOf(study, pair.inputs, ids);
  const draws = pairedDraws(study, pair.inputs, ensemble);
  if (draws === null || groups.length === 0) return [];
  const [effects] = groupEffects({ ...draws, groups: groups.map(({ members }) => members) }, (inputs) => {
    const [own, other] = pair.over(inputs, baseDraws);
    return [own!.map((utility, draw) => utility - (other?.[draw] ?? 0))];
  });
  return groups
    .map(({ group, label }, index) => ({ group, label, totalEffect: effects![index]!.totalFraction }))
    .sort((a, b) => b.totalEffect - a.totalEffect);
}

interface Group {
  group: string;
  label: string;
  members: number[];
}

function groupsOf(study: Study, inputs: readonly UncertainInput[], ids: readonly string[]): Group[] {
  const label = labelsOf(study.candidates);
  const guessed = new Set(
    study.provenance.filter(({ origin }) => origin === 'assumed').map(({ path }) => path),
  );
  const groups = new Map<string, Group>();
  inputs.forEach(({ path, owner }, index) => {
    const [group, words] =
      path.startsWith('guess.') || guessed.has(path)
        ? ['guesses', 'what was guessed']
        : owner !== null && ids.includes(owner)
          ? [owner, `sheet of ${label(owner)}`]
          : /^(pack|wiring)\b/.test(path)
            ? ['pack', 'pack and wiring']
            : path.startsWith('loads.')
              ? ['loads', 'lights and other loads']
              : ['feature', 'feature and carrier'];
    const found = groups.get(group) ?? { group, label: words, members: [] };
    found.members.push(index);
    groups.set(group, found);
  });
  return [...groups.values()];
}

/** Two sets of draws with nothing in common; null when the measurements leave too few draws for two. */
function pairedDraws(
  study: Study,
  inputs: readonly UncertainInput[],
  ensemble: Ensemble | null,
): Omit<PairedDraws, 'groups'> | null {
  if (ensemble === null) {
    const a = new DrawPlan(inputs, study.seed, baseDraws, { dimensionCount: halfDimensions });
    const b = new DrawPlan(inputs, study.seed, baseDraws, {
      firstDimensionIndex: halfDimensions,
      dimensionCount: halfDimensions,
      copy: 'other set: ',
    });
    const columns = (plan: DrawPlan) => inputs.map((_, index) => plan.values(index));
    return { a: columns(a), b: columns(b) };
  }
  if (ensemble.drawCount < 2 * baseDraws) return null;
  const drawn = new Map(ensemble.inputs.map(({ path, values }) => [path, values]));
  const part = (from: number) => inputs.map(({ path }) => drawn.get(path)!.subarray(from, from + baseDraws));
  return { a: part(0), b: part(baseDraws) };
}
