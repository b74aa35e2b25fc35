import {
  assumed,
  choice,
  type FieldDeclaration,
  longestLabel,
  nameField,
  required,
  text,
  usually,
} from '../quantity/field.js';
import { bodyColumns } from './body-columns.js';
import { costColumns } from './cost-columns.js';
import { couplingColumns } from './coupling-columns.js';
import { gearingColumns } from './gearing-columns.js';
import { holdingColumns } from './holding-columns.js';
import { ratedFigures } from './rated-figures.js';
import { ratingColumns } from './rating-columns.js';
import type { DriveKind, DriveSheet, Motion } from './sheet.js';

/** Kinds in the order in which templates and references list them. */
export const driveKinds = [
  'position-servo',
  'worm-gearmotor',
  'screw-actuator',
] as const satisfies DriveKind[];

/** What of a sheet comes from columns: everything but the repeated rows. */
export type SheetProperty = Exclude<keyof DriveSheet, 'otherVoltages'>;

/** Columns that every row starts with. */
export const leadingColumns: readonly FieldDeclaration[] = [
  required(
    nameField('id', 'id', {
      meaning: 'short name that other files and flags use',
      how: 'make it up: letters, digits, - and _',
    }),
  ),
  assumed(
    text('label', 'label', {
      longest: longestLabel,
      meaning: 'name as printed',
      how: 'make it up; it need not be unique',
    }),
    null,
    'the id',
  ),
  required(
    choice('type', 'kind', driveKinds, {
      meaning: 'kind of drive',
      how: 'position-servo: holds by position under power; worm-gearmotor: a worm in the gearbox; screw-actuator: a rod that slides in and out',
    }),
  ),
];

/** Every column of a motion's drives, declared once, in template order. */
export function sheetColumns(motion: Motion): FieldDeclaration[] {
  return [
    ...ratingColumns(motion),
    ...holdingColumns(motion),
    ...gearingColumns,
    ...couplingColumns,
    ...bodyColumns,
    ...costColumns(motion),
  ];
}

/** The columns that state one voltage's figures and may be repeated at another. */
export const ratedProperties: readonly string[] = ['ratedVoltageV', ...ratedFigures];

/** What one drive type makes of the shared columns. Columns it does not name stay optional. */
export interface TypeColumns {
  required: readonly string[];
  /** One of two groups must be complete: the stall figure, or the rated point. */
  either?: readonly string[];
  /** Default when blank, in the value grammar (null: a rule), and its basis. */
  assumed: Readonly<Record<string, readonly [value: string | null, basis: string]>>;
  /** A value in these columns is an error for the type. */
  notApplicable: readonly string[];
  /** Ranges that this type usually has. */
  usual?: Readonly<Record<string, string>>;
  /** Choices that this type leaves open, where it narrows them. */
  choices?: Readonly<Record<string, readonly string[]>>;
}

/**
 * The columns of one drive type with what they mean to it.
 *
 * @throws when it names a column that is not declared: a slip in the program
 */
export function columnsOf(motion: Motion, type: TypeColumns): FieldDeclaration[] {
  const shared = sheetColumns(motion);
  const named = [
    ...type.required,
    ...(type.either ?? []),
    ...Object.keys(type.assumed),
    ...type.notApplicable,
    ...Object.keys(type.usual ?? {}),
    ...Object.keys(type.choices ?? {}),
  ];
  const unknown = named.find((name) => shared.every((field) => field.name !== name));
  if (unknown !== undefined) throw new Error(`no column ${unknown}`);
  const own = shared.filter((field) => !type.notApplicable.includes(field.name));
  return [...leadingColumns, ...own.map((field) => asType(field, type))];
}

function asType(shared: FieldDeclaration, type: TypeColumns): FieldDeclaration {
  const { name } = shared;
  const usual = type.usual?.[name];
  const ranged = usual === undefined ? shared : usually(shared, usual);
  const choices = type.choices?.[name];
  const field = choices === undefined ? ranged : { ...ranged, choices };
  if (type.required.includes(name)) return required(field);
  if (type.either?.includes(name)) return { ...field, presence: 'either' };
  const taken = type.assumed[name];
  return taken === undefined ? field : assumed(field, taken[0], taken[1]);
}
