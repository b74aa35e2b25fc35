import { type Dimension, dimensions } from './dimension.js';
import type { Bounds } from './quantile.js';
import { valueFrom } from './value.js';

/** How a cell is read. `count` is a whole number; `name` an id that other files refer to. */
export type FieldKind = 'quantity' | 'count' | 'text' | 'choice' | 'yes-no' | 'date' | 'name';

/**
 * What happens when the cell is blank: an error, a named default, or not known.
 * `either`: one of two groups of columns must be complete (the stall figure, or the rated point).
 */
export type Presence = 'required' | 'either' | 'assumed' | 'optional';

/** One column or item, declared once: reading, messages, templates and references all come from it. */
export interface FieldDeclaration {
  /** As in the file: `stall_torque`, `feature.mass`. */
  name: string;
  /** Where the value goes: a key of the object the row becomes, or a path in the study. */
  property: string;
  /** What it is, in one phrase. */
  meaning: string;
  /** How a maker measures or finds it, and with what. */
  how: string;
  kind: FieldKind;
  /** null for texts, choices and dates. */
  dimension: Dimension | null;
  /** Unit of a bare number; '' for pure numbers, null when a bare number is an error. */
  habitualUnit: string | null;
  /** Unit in which it is shown; null: by size, from the display units. */
  displayUnit: string | null;
  /** Valid words of a choice; empty otherwise. */
  choices: readonly string[];
  presence: Presence;
  /** What is taken when blank, in the value grammar; null when nothing is, or when a rule decides. */
  default: string | null;
  /** Why that is taken. */
  basis: string;
  /** Row of the assumption table's spreads that applies when a figure states none (`stall_effort`); null: exact. */
  spreadGroup: string | null;
  /** SI range that such parts usually have; outside it a slip of the unit is suspected. */
  plausible: Bounds | null;
  /** SI range outside which the value cannot be; null = any number. */
  bounds: Bounds | null;
  /** Most characters of a cell: what stands in tables and charts must be short. */
  longest: number;
}

/** The texts every declaration carries. */
interface Told {
  meaning: string;
  how: string;
}

/** What a quantity may state beyond its texts. `plausible` and `within` in the value grammar: `0.05..15 N·m`. */
interface QuantityTold extends Told {
  habitual?: string;
  shownIn?: string;
  plausible?: string;
  within?: string;
  spread?: string;
}

/** Most characters of any cell; a longer one is a quote that does not close, or a text that belongs elsewhere. */
export const longestText = 2_000;

/** Most characters of an id. */
const longestId = 60;

/** Most characters of a name as printed. */
export const longestLabel = 100;

const base = {
  kind: 'quantity',
  dimension: null,
  habitualUnit: null,
  displayUnit: null,
  choices: [],
  presence: 'optional',
  default: null,
  basis: '',
  spreadGroup: null,
  plausible: null,
  bounds: null,
  longest: longestText,
} as const satisfies Partial<FieldDeclaration>;

/** A number with a unit. Pure numbers and money take bare numbers, everything else needs its unit. */
export function quantity(
  name: string,
  property: string,
  dimension: Dimension,
  told: QuantityTold,
): FieldDeclaration {
  const pure = dimensions[dimension].siUnit === '' ? '' : null;
  return {
    ...base,
    name,
    property,
    dimension,
    meaning: told.meaning,
    how: told.how,
    habitualUnit: told.habitual ?? pure,
    displayUnit: told.shownIn ?? told.habitual ?? null,
    spreadGroup: told.spread ?? null,
    plausible: told.plausible === undefined ? null : boundsOf(told.plausible, dimension),
    bounds: told.within === undefined ? null : boundsOf(told.within, dimension),
  };
}

/** A whole number of at least `from`. */
export function count(
  name: string,
  property: string,
  from: number,
  told: Told & { to?: number },
): FieldDeclaration {
  return {
    ...base,
    name,
    property,
    kind: 'count',
    dimension: 'count',
    habitualUnit: '',
    meaning: told.meaning,
    how: told.how,
    bounds: { low: from, high: told.to ?? Number.MAX_SAFE_INTEGER },
  };
}

/** A word out of a list. */
export function choice(
  name: string,
  property: string,
  choices: readonly string[],
  told: Told,
): FieldDeclaration {
  return { ...base, name, property, kind: 'choice', choices, meaning: told.meaning, how: told.how };
}

/** Free text, kept as written. */
export function text(name: string, property: string, told: Told & { longest?: number }): FieldDeclaration {
  const { meaning, how, longest = longestText } = told;
  return { ...base, name, property, kind: 'text', meaning, how, longest };
}

/** `yes` or `no`. */
export function yesNo(name: string, property: string, told: Told): FieldDeclaration {
  return {
    ...base,
    name,
    property,
    kind: 'yes-no',
    choices: ['yes', 'no'],
    meaning: told.meaning,
    how: told.how,
  };
}

/** A calendar date. */
export function date(name: string, property: string, told: Told): FieldDeclaration {
  return { ...base, name, property, kind: 'date', meaning: told.meaning, how: told.how };
}

/** A short id that other files and flags refer to. */
export function nameField(name: string, property: string, told: Told): FieldDeclaration {
  return { ...base, name, property, kind: 'name', meaning: told.meaning, how: told.how, longest: longestId };
}

/** The field where a blank is an error. */
export function required(field: FieldDeclaration): FieldDeclaration {
  return { ...field, presence: 'required', default: null, basis: '' };
}

/** The field where a blank takes a default. `value` null: a rule decides, as `basis` says. */
export function assumed(field: FieldDeclaration, value: string | null, basis: string): FieldDeclaration {
  return { ...field, presence: 'assumed', default: value, basis };
}

/** The field with another range that its type usually has. */
export function usually(field: FieldDeclaration, plausible: string): FieldDeclaration {
  return { ...field, plausible: boundsOf(plausible, field.dimension!) };
}

/** `0.05..15 N·m`, `0..` and `..1` as SI bounds; an open end is infinite. */
function boundsOf(range: string, dimension: Dimension): Bounds {
  const open = /^(.*?)\.\.(.*)$/.exec(range)!;
  const unit = range.replace(/^[^a-zA-Z°µΩ%]*/, '');
  const end = (text: string, otherwise: number) => {
    const number = text.replace(unit, '').trim();
    return number === '' ? otherwise : valueFrom(`${number} ${unit}`.trim(), dimension).nominal;
  };
  const ends = [end(open[1]!, Number.NEGATIVE_INFINITY), end(open[2]!, Number.POSITIVE_INFINITY)];
  return { low: Math.min(...ends), high: Math.max(...ends) };
}
