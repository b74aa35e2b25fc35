import { driveTypes } from '../../drives/registry.js';
import type { Bounds } from '../../quantity/quantile.js';
import type { Spread } from '../../quantity/spread.js';
import type { Provenance } from '../../study/provenance.js';
import type { Candidate, Study } from '../../study/study.js';
import { guessedInertiaKgM2 } from '../mechanics.js';
import type { PlannedInput } from '../sampling/draw-plan.js';
import { thermalOf } from '../thermal-model.js';

/** Puts a drawn value into a study whose numbers may be changed. */
export type Setter = (study: Study, value: number) => void;

/** An uncertain number of a study, and where a drawn value goes. */
export interface UncertainInput extends PlannedInput {
  set: Setter;
  /** Draws of other inputs have to be in place before: a factor on something worked out from them. */
  last: boolean;
}

/** Guesses of inertia from the shape alone are this far off, as a factor (from experience). */
const inertiaFactor: Spread = { shape: 'normal', halfWidth: 0.35 };

/** Guesses of heat flow and heat capacity are good to a factor of two (from experience). */
const heatFactor: Spread = { shape: 'uniform', low: 0.5, high: 2 };

/** Numbers that change none of the sampled outcomes. */
const withoutEffect = new Set([
  'windingLimitK',
  'breaksAtEffort',
  'noiseDb',
  'noiseDistanceM',
  'sideLoadLimitN',
  'backlash',
]);

/** Sheet figures that only count where a condition holds. */
const conditions: Record<string, (candidate: Candidate) => boolean> = {
  regulatorEfficiency: ({ sheet }) => sheet.supply === 'regulated',
  ratedEffort: ({ sheet }) => sheet.stallEffort === null,
  ratedSpeed: ({ sheet }) => sheet.stallEffort === null,
  ratedCurrentA: ({ sheet }) => sheet.stallEffort === null,
  staticFrictionRatio: ({ kind }) => driveTypes[kind].locksByCalculation,
};

/**
 * Every number of a study that is not exactly known, with its spread: those with a written or a default spread, and
 * factors on what the tool had to guess. Numbers that matter to nothing are left out.
 */
export function uncertainInputs(study: Study): UncertainInput[] {
  const written = study.provenance.flatMap((entry) => inputFrom(study, entry) ?? []);
  return [...written, ...guessFactors(study)];
}

function inputFrom(study: Study, entry: Provenance): UncertainInput | null {
  const { path, spread, value } = entry;
  if (spread === null || spread.shape === 'exact' || typeof value !== 'number') return null;
  if (/^(packs|measured)\./.test(path)) return null;
  const name = path.slice(path.lastIndexOf('.') + 1);
  if (withoutEffect.has(name)) return null;
  const candidate = ownerOf(study, path);
  if (candidate !== null && conditions[name]?.(candidate) === false) return null;
  const set = setterOf(study, path);
  if (set === null) return null;
  return {
    path,
    field: entry.field,
    owner: entry.owner,
    shared: candidate === null,
    nominal: value,
    spread,
    bounds: boundsOf(name, value),
    set,
    last: false,
  };
}

function ownerOf(study: Study, path: string): Candidate | null {
  return study.candidates.find(({ id }) => path.startsWith(`candidates.${id}.`)) ?? null;
}

/** Positive figures stay positive; shares and efficiencies stay under 1. */
function boundsOf(name: string, nominal: number): Bounds | null {
  if (nominal < 0) return null;
  const share = /(Efficiency|Fraction)$/.test(name);
  return { low: nominal * 1e-3, high: share ? 1 : Number.POSITIVE_INFINITY };
}

/** Lists of a study whose members are named by their id. */
const listed = { candidates: 'candidates', loads: 'loads', packs: 'packs' } as const;

/** A function that writes to a path; null when the path leads to no number. */
function setterOf(study: Study, path: string): Setter | null {
  const [head, ...rest] = path.split('.');
  if (head !== undefined && head in listed) {
    const list = listed[head as keyof typeof listed];
    const index = study[list].findIndex(({ id }) => id === rest[0]);
    if (index < 0) return null;
    return nested((target) => target[list][index] as unknown as Tree, rest.slice(1));
  }
  return nested((target) => target as unknown as Tree, [head!, ...rest]);
}

interface Tree {
  [key: string]: Tree | number | null;
}

/** Writes through up to three keys, spelled out because it runs for every input of every draw. */
function nested(root: (study: Study) => Tree, keys: string[]): Setter | null {
  const [first = '', second = '', third = ''] = keys;
  if (keys.length === 1) {
    return (study, value) => {
      root(study)[first] = value;
    };
  }
  if (keys.length === 2) {
    return (study, value) => {
      (root(study)[first] as Tree)[second] = value;
    };
  }
  if (keys.length !== 3) return null;
  return (study, value) => {
    ((root(study)[first] as Tree)[second] as Tree)[third] = value;
  };
}

/** Factors on what was guessed because nobody gave it. */
function guessFactors(study: Study): UncertainInput[] {
  const factors: UncertainInput[] = [];
  const add = (path: string, field: string, owner: string | null, spread: Spread, set: Setter): void => {
    const bounds = { low: 0.05, high: Number.POSITIVE_INFINITY };
    factors.push({ path, field, owner, shared: owner === null, nominal: 1, spread, bounds, set, last: true });
  };
  const { feature } = study;
  if (feature.kind === 'hinge' && feature.inertiaKgM2 === null) {
    add('guess.feature.inertia', 'feature.inertia', null, inertiaFactor, (drawn, factor) => {
      drawn.feature.inertiaKgM2 = factor * guessedInertiaKgM2(drawn.feature);
    });
  }
  study.candidates.forEach(({ id, sheet }, index) => {
    const guessed = thermalOf(sheet, study.air);
    const { caseToAirKPerW, windingHeatCapacityJPerK, caseHeatCapacityJPerK } = guessed;
    const figures = { caseToAirKPerW, windingHeatCapacityJPerK, caseHeatCapacityJPerK };
    const fields = {
      caseToAirKPerW: 'case_to_air',
      windingHeatCapacityJPerK: 'winding_heat_capacity',
      caseHeatCapacityJPerK: 'case_heat_capacity',
    };
    for (const name of Object.keys(figures) as (keyof typeof figures)[]) {
      if (sheet[name] !== null) continue;
      add(`guess.${id}.${name}`, fields[name], id, heatFactor, (drawn, factor) => {
        drawn.candidates[index]!.sheet[name] = factor * figures[name];
      });
    }
  });
  return factors;
}
