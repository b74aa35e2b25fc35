import { formatQuantity } from '../../quantity/format.js';
import { bareInertiaKgM2, firstMomentKgM } from '../../simulate/mechanics.js';
import { mass } from '../figures.js';
import { assumedBurden } from './burdens.js';
import type { ChangeSetting } from './lesser-change.js';
import { type ChangeKind, proposal, type Setup } from './proposal.js';
import { lengthText } from './words.js';

/** Tried: 100 g, but never more than these shares of mass, first moment and inertia. */
const triedKg = 0.1;
const mostMassFraction = 0.1;
const mostMomentFraction = 0.25;
const mostInertiaFraction = 0.5;

/** What is left is rounded down to this. */
const stepKg = 0.005;

/** Less mass at the tip, or on the carriage of a slide. */
export const massShaved: ChangeKind = {
  id: 'mass-shaved',
  family: 'mass',
  propose(setup) {
    const shavedKg = shavedMassKg(setup);
    if (!(shavedKg > 0)) return { reason: 'the feature weighs too little to take anything off' };
    const { study } = setup;
    const isHinge = study.feature.kind === 'hinge';
    const changed = without(setup, shavedKg);
    const burden = assumedBurden('mass-shaved', study.feature.featureCount);
    return proposal({
      parts: ['mass-shaved'],
      title: `${mass(shavedKg)} less ${isHinge ? 'at the tip' : 'on the carriage'}`,
      actions: [
        isHinge
          ? `Take ${mass(shavedKg)} off ${lengthText(study.feature.tipDistanceM)} from the hinge: thinner skin, hollow ribs, lamps moved towards the hinge.`
          : `Take ${mass(shavedKg)} off whatever travels on the rail.`,
      ],
      settings: settingsOf(changed, isHinge),
      burden: { ...burden, massKg: -study.feature.featureCount * shavedKg },
      setup: changed,
      // Mass on the body counts drives and packs; the feature's own mass is counted by the simulation.
      addedBodyMassKg: 0,
      sideEffects: () => [
        'Lighter is often weaker: try it on a sample before the skin comes off.',
        ...(isHinge
          ? [`It then balances ${lengthText(changed.study.feature.balanceDistanceM)} from the hinge.`]
          : []),
      ],
    });
  },
};

/** How much is tried on one feature: 100 g, or what a light feature can lose. */
export function shavedMassKg({ study: { feature } }: Setup): number {
  const shares = [triedKg, mostMassFraction * feature.massKg];
  if (feature.kind === 'hinge') {
    const { tipDistanceM } = feature;
    shares.push((mostMomentFraction * firstMomentKgM(feature)) / tipDistanceM);
    shares.push((mostInertiaFraction * bareInertiaKgM2(feature)) / tipDistanceM ** 2);
  }
  const mostKg = Math.min(...shares);
  return mostKg > 2 * stepKg ? Math.floor(mostKg / stepKg + 1e-9) * stepKg : mostKg;
}

/**
 * The setup with so much mass taken off each feature at its tip: first moment less by mass × tip distance, inertia
 * less by mass × tip distance². (M1)
 */
export function without({ study, candidate }: Setup, shavedKg: number): Setup {
  const { feature } = study;
  const massKg = feature.massKg - shavedKg;
  if (feature.kind === 'slide') return { study: { ...study, feature: { ...feature, massKg } }, candidate };
  const { tipDistanceM, tipScaleKg } = feature;
  const left = firstMomentKgM(feature) - shavedKg * tipDistanceM;
  return {
    study: {
      ...study,
      feature: {
        ...feature,
        massKg,
        balanceDistanceM: left / massKg,
        tipScaleKg: tipScaleKg === null ? null : tipScaleKg - shavedKg,
        inertiaKgM2: bareInertiaKgM2(feature) - shavedKg * tipDistanceM ** 2,
      },
    },
    candidate,
  };
}

function settingsOf({ study: { feature } }: Setup, isHinge: boolean): ChangeSetting[] {
  const kilograms = (field: string, massKg: number): ChangeSetting => ({
    field,
    value: massKg,
    unit: 'kg',
    shown: mass(massKg),
  });
  const settings = [kilograms('feature.mass', feature.massKg)];
  if (!isHinge) return settings;
  const { balanceDistanceM, tipScaleKg, inertiaKgM2 } = feature;
  settings.push(
    {
      field: 'feature.inertia',
      value: inertiaKgM2 ?? 0,
      unit: 'kg·m²',
      shown: formatQuantity(inertiaKgM2 ?? 0, 'inertia'),
    },
    tipScaleKg === null
      ? {
          field: 'feature.balance_distance',
          value: balanceDistanceM,
          unit: 'm',
          shown: lengthText(balanceDistanceM),
        }
      : kilograms('feature.tip_scale', tipScaleKg),
  );
  return settings;
}
