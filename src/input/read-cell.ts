import { cellTooLong } from '../problem/file-messages.js';
import { nearestName } from '../problem/nearest-name.js';
import * as say from '../problem/table-messages.js';
import type { Report, Trouble } from '../problem/trouble.js';
import {
  implausible,
  outOfBounds,
  quotientForProduct,
  unitOfAnotherDimension,
  withUnitPlace,
} from '../problem/value-messages.js';
import { isoDate } from '../quantity/date-text.js';
import { type Dimension, dimensionPhrase, dimensions } from '../quantity/dimension.js';
import { type FieldDeclaration, longestText } from '../quantity/field.js';
import { formatQuantity, formatRange, formatValue } from '../quantity/format.js';
import { likelyUnit } from '../quantity/likely-unit.js';
import type { NumberStyle } from '../quantity/number-text.js';
import type { Bounds } from '../quantity/quantile.js';
import type { Spread } from '../quantity/spread.js';
import type { Unit } from '../quantity/unit.js';
import { findUnits, unitOf } from '../quantity/unit-table.js';
import { readValue } from '../quantity/value.js';
import type { Cell } from './table.js';

/** What a cell turned out to be. A failed one has been reported. */
export type CellReading = { state: 'blank' } | { state: 'failed' } | GivenValue;

/** A value as it was written and in SI (or as text or choice). */
export interface GivenValue {
  state: 'given';
  value: number | string | boolean;
  /** null when none was written. */
  spread: Spread | null;
  /** As in the file, with the unit that stood apart from it. */
  written: string;
}

const failed = { state: 'failed' } as const;

/**
 * Reads one cell as its field says; undefined and blank cells are `blank`.
 *
 * @param field - what the cell should hold
 * @param cell - the cell, or undefined when the row has none
 * @param style - decimal mark of the file
 * @param report - takes every trouble with its place
 */
export function readCell(
  field: FieldDeclaration,
  cell: Cell | undefined,
  style: NumberStyle,
  report: Report,
): CellReading {
  if (cell === undefined || cell.text.trim() === '') return { state: 'blank' };
  if (cell.text.length > field.longest) {
    // Longer than any cell may be: told with the table already.
    if (cell.text.length <= longestText) report(cell.place, cellTooLong(cell.text, field.longest));
    return failed;
  }
  const reading = readers[field.kind](field, cell, style, report);
  if (cell.unit !== null && cell.unit.text !== '' && field.dimension === null)
    report(cell.unit.place, say.unitIgnored(field.name, cell.unit.text));
  return reading;
}

type Reader = (field: FieldDeclaration, cell: Cell, style: NumberStyle, report: Report) => CellReading;

const readers: Record<FieldDeclaration['kind'], Reader> = {
  quantity: readQuantity,
  count: readCount,
  choice: readChoice,
  'yes-no': readYesNo,
  date(_field, cell, _style, report) {
    const date = isoDate(cell.text.trim());
    if (date === null) report(cell.place, say.notADate(cell.text));
    return date === null ? failed : given(date, cell.text);
  },
  name(_field, cell, _style, report) {
    const name = cell.text.trim();
    if (/^[\p{L}\p{N}_-]+$/u.test(name)) return given(name, name);
    report(cell.place, say.badName(cell.text));
    return failed;
  },
  text: (_field, cell) => given(cell.text, cell.text),
};

function given(value: string | boolean, written: string): GivenValue {
  return { state: 'given', value, spread: null, written };
}

function readQuantity(field: FieldDeclaration, cell: Cell, style: NumberStyle, report: Report): CellReading {
  const dimension = field.dimension!;
  const bareUnit = apartUnit(cell, dimension, report) ?? habitualUnit(field);
  if (bareUnit === 'reported') return failed;
  const reading = readValue(cell.text, { dimension, bareUnit, style });
  if (!reading.ok) {
    report(cell.place, withPlaceOfUnit(reading.trouble, cell, dimension));
    return failed;
  }
  for (const warning of reading.warnings) report(cell.place, warning);
  const { nominal, spread } = reading.value;
  if (!isWithin(field, nominal, spread, cell, report)) return failed;
  const apart = reading.bare && cell.unit !== null ? cell.unit.text : '';
  const written = `${cell.text.trim()} ${apart}`.trim();
  return { state: 'given', value: nominal, spread, written };
}

/** A missing unit may also stand once for all rows: in the head of the column, or beside the item. */
function withPlaceOfUnit(trouble: Trouble, { place }: Cell, dimension: Dimension): Trouble {
  if (trouble.code !== 'missing-unit' || place.line === null || place.column === null) return trouble;
  const unit = dimensions[dimension].likelyUnits[0]!;
  const elsewhere = ['study.csv', 'measured.csv'].includes(place.file)
    ? 'write the unit into the column “unit”'
    : `put the unit of all rows into the column head: ${place.column} [${unit}]`;
  return withUnitPlace(trouble, elsewhere);
}

function habitualUnit(field: FieldDeclaration): Unit | null {
  return field.habitualUnit === null ? null : unitOf(field.habitualUnit, field.dimension!);
}

/** The unit written in the header or a unit column; null when there is none, `reported` when it does not fit. */
function apartUnit(cell: Cell, dimension: Dimension, report: Report): Unit | null | 'reported' {
  if (cell.unit === null || cell.unit.text === '') return null;
  const { text, place } = cell.unit;
  const found = findUnits(text);
  const fitting = found.find((unit) => unit.dimension === dimension);
  if (fitting !== undefined) {
    if (fitting.slipFor !== null) report(place, quotientForProduct(text, text, fitting.slipFor));
    return fitting;
  }
  if (found.length === 0) report(place, say.unknownHeaderUnit(place.column ?? text, text));
  else
    report(
      place,
      unitOfAnotherDimension(
        text,
        dimensionPhrase(found[0]!.dimension),
        dimensionPhrase(dimension),
        likelyUnit(found[0]!, dimension),
        text.includes('[') ? 'header' : 'column',
      ),
    );
  return 'reported';
}

function isWithin(
  field: FieldDeclaration,
  nominal: number,
  spread: Spread | null,
  cell: Cell,
  report: Report,
): boolean {
  const ends = spread !== null && 'low' in spread ? [nominal, spread.low, spread.high] : [nominal];
  const shown = formatSi(nominal, field);
  if (field.bounds !== null && ends.some((end) => outside(end, field.bounds!))) {
    report(cell.place, outOfBounds(cell.text, shown, rangePhrase(field.bounds, field)));
    return false;
  }
  if (field.plausible !== null && outside(nominal, field.plausible))
    report(cell.place, implausible(cell.text, shown, rangePhrase(field.plausible, field)));
  return true;
}

const outside = (value: number, { low, high }: Bounds): boolean => {
  const slack = 1e-9 * Math.max(Math.abs(low), 1e-12);
  return value < low - slack || value > high * (high > 0 ? 1 + 1e-9 : 1);
};

/** An SI value as the field shows it. */
export function formatSi(si: number, field: FieldDeclaration): string {
  const dimension = field.dimension!;
  return field.displayUnit === null
    ? formatQuantity(si, dimension)
    : formatValue(si, field.displayUnit, 3, dimension);
}

function rangePhrase({ low, high }: Bounds, field: FieldDeclaration): string {
  if (high === Number.POSITIVE_INFINITY || high >= Number.MAX_SAFE_INTEGER)
    return `at least ${formatSi(low, field)}`;
  if (low === Number.NEGATIVE_INFINITY) return `at most ${formatSi(high, field)}`;
  return field.displayUnit === null
    ? formatRange(low, high, field.dimension!)
    : `${formatSi(low, field)} to ${formatSi(high, field)}`;
}

function readCount(field: FieldDeclaration, cell: Cell, style: NumberStyle, report: Report): CellReading {
  const reading = readQuantity(field, cell, style, report);
  if (reading.state !== 'given') return reading;
  if (Number.isInteger(reading.value) && reading.spread === null) return reading;
  report(cell.place, say.notWhole(cell.text));
  return failed;
}

function readChoice(field: FieldDeclaration, cell: Cell, _style: NumberStyle, report: Report): CellReading {
  const word = cell.text.trim();
  const found = field.choices.find((choice) => choice === word.toLowerCase());
  if (found !== undefined) return given(found, word);
  report(
    cell.place,
    say.unknownChoice(field.name, cell.text, field.choices, nearestName(word, field.choices)),
  );
  return failed;
}

const yesWords: Record<string, string> = {
  yes: 'yes',
  y: 'yes',
  true: 'yes',
  no: 'no',
  n: 'no',
  false: 'no',
};

function readYesNo(field: FieldDeclaration, cell: Cell, style: NumberStyle, report: Report): CellReading {
  const word = Object.hasOwn(yesWords, cell.text.trim().toLowerCase())
    ? yesWords[cell.text.trim().toLowerCase()]!
    : cell.text;
  const reading = readChoice(field, { ...cell, text: word }, style, report);
  return reading.state === 'given' ? given(reading.value === 'yes', cell.text.trim()) : reading;
}
