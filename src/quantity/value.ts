import type { Trouble } from '../problem/trouble.js';
import * as say from '../problem/value-messages.js';
import { isDateText, isSpreadsheetError } from './date-text.js';
import { type Dimension, dimensionPhrase, dimensions } from './dimension.js';
import { likelyUnit } from './likely-unit.js';
import { type NumberStyle, numberPattern, plainStyle, readNumber } from './number-text.js';
import { median } from './quantile.js';
import { normalise } from './spelling.js';
import type { Spread, SpreadValue } from './spread.js';
import type { Unit } from './unit.js';
import { findUnits, unitOf } from './unit-table.js';

/** What the reader of a value knows about it. */
export interface ValueContext {
  dimension: Dimension;
  /** Unit of a bare number: from the header, a unit column or habit; null when a bare number is an error. */
  bareUnit: Unit | null;
  style: NumberStyle;
}

/** A value read, with its unit and warnings, or the one trouble that prevented it. `bare`: no unit was written. */
export type ValueReading =
  | { ok: true; value: SpreadValue; unit: Unit; bare: boolean; warnings: Trouble[] }
  | { ok: false; trouble: Trouble };

/** Carries a trouble out of the small functions below; caught in {@link readValue}, never seen outside. */
class Unreadable {
  constructor(readonly trouble: Trouble) {}
}

/**
 * Reads `number [unit] [spread]`: `25 kg·cm`, `1.2 A ±15%`, `420 g +/- 20 g`, `0.3..0.5`, `0.3..0.4..0.5`.
 *
 * The nominal figure of a range `a..b` is its median, of `a..m..b` it is m. The spread is null when none was written.
 *
 * @param text - the cell; must not be blank
 * @param context - the dimension expected and what a bare number means
 */
export function readValue(text: string, context: ValueContext): ValueReading {
  try {
    return new Reader(text.trim(), context).read();
  } catch (thrown) {
    if (thrown instanceof Unreadable) return { ok: false, trouble: thrown.trouble };
    throw thrown;
  }
}

/** Reads a text of the program's own tables; the unit is part of the text, or the value is a bare number. */
export function valueFrom(text: string, dimension: Dimension): SpreadValue {
  const takesBare = dimensions[dimension].siUnit === '';
  const bareUnit = takesBare ? unitOf('', dimension) : null;
  const reading = readValue(text, { dimension, bareUnit, style: plainStyle });
  if (!reading.ok) throw new Error(`${text}: ${reading.trouble.message}`);
  return reading.value;
}

/** A number with the text of the unit behind it. */
interface Piece {
  value: number;
  number: string;
  unitText: string;
}

class Reader {
  private readonly warnings: Trouble[] = [];
  private bare = false;
  private readonly normal: string;

  constructor(
    private readonly text: string,
    private readonly context: ValueContext,
  ) {
    this.normal = normalise(text);
  }

  read(): ValueReading {
    if (/\p{Nd}[\u2070-\u2079\u00b2\u00b3\u00b9]/u.test(this.text)) throw this.notANumber();
    const [middle, tolerance, ...more] = this.normal.split('±');
    if (more.length > 0) throw new Unreadable(say.malformedSpread(this.text));
    const ends = middle!.split('..');
    if (
      ends.length > 3 ||
      (ends.length > 1 && (tolerance !== undefined || ends.some((end) => end.trim() === '')))
    )
      throw new Unreadable(say.malformedSpread(this.text));
    if (ends.length > 1) return this.range(ends.map((end) => this.piece(end)));
    return this.single(this.piece(middle!), tolerance === undefined ? null : this.piece(tolerance));
  }

  private single(middle: Piece, tolerance: Piece | null): ValueReading {
    const relative = tolerance !== null && /^(?:%|percent)$/i.test(tolerance.unitText);
    if (tolerance !== null && tolerance.value < 0) throw new Unreadable(say.malformedSpread(this.text));
    const unitText = middle.unitText === '' && !relative ? (tolerance?.unitText ?? '') : middle.unitText;
    const unit = this.unit(unitText, middle);
    const nominal = unit.toSi(middle.value);
    if (!Number.isFinite(nominal)) throw this.notANumber();
    if (tolerance === null) return this.done(nominal, null, unit);
    const step = relative
      ? Math.abs(middle.value) * (tolerance.value / 100) * unit.slope(middle.value)
      : this.step(tolerance, nominal, unit);
    if (relative && unit.symbol === '%' && this.context.dimension === 'ratio') {
      const share = (middle.value * tolerance.value) / 100;
      const range = `${trimmed(middle.value - share)}..${trimmed(middle.value + share)} %`;
      this.warnings.push(say.shareOfAPercentage(this.text, range));
    }
    return this.done(nominal, step === 0 ? { shape: 'exact' } : { shape: 'normal', halfWidth: step }, unit);
  }

  /** Half width in SI of a tolerance written in its own unit, or in the value's when it has none. */
  private step(tolerance: Piece, nominal: number, valueUnit: Unit): number {
    const unit = tolerance.unitText === '' ? valueUnit : this.unit(tolerance.unitText, tolerance);
    return tolerance.value * unit.slope(unit.fromSi(nominal));
  }

  private range(pieces: Piece[]): ValueReading {
    const last = pieces.at(-1)!.unitText;
    const unit = this.unit(last, pieces.at(-1)!);
    const values = pieces.map((piece) => {
      const own = piece.unitText === '' || piece.unitText === last ? unit : this.unit(piece.unitText, piece);
      return own.toSi(piece.value);
    });
    if (values.some((value) => !Number.isFinite(value))) throw this.notANumber();
    const inSi = unit.toSi(2) < unit.toSi(1) ? [...values].reverse() : values;
    if (inSi.some((value, index) => index > 0 && value < inSi[index - 1]!))
      throw new Unreadable(say.reversedRange(this.text));
    const low = inSi[0]!;
    const high = inSi.at(-1)!;
    if (low === high) return this.done(low, { shape: 'exact' }, unit);
    const spread: Spread =
      inSi.length === 3
        ? { shape: 'triangular', low, mode: inSi[1]!, high }
        : { shape: 'uniform', low, high };
    return this.done(spread.shape === 'triangular' ? spread.mode : median(spread, low), spread, unit);
  }

  private piece(text: string): Piece {
    const piece = text.trim();
    const match = numberPattern.exec(piece);
    if (match === null) return this.gaugeInFront(piece);
    const reading = readNumber(match[0], this.context.style);
    const unitText = piece.slice(match[0].length).trim();
    const whole = (number: string) => `${number} ${unitText}`.trim();
    if (isDateText(piece)) throw new Unreadable(say.looksLikeADate(this.text, this.expected()));
    if (!reading.ok) {
      if (reading.why === 'ambiguous')
        throw new Unreadable(say.ambiguousNumber(this.text, whole(reading.dotted), whole(reading.plain)));
      if (reading.why === 'decimal-comma')
        throw new Unreadable(say.decimalComma(this.text, whole(reading.dotted)));
      throw this.notANumber();
    }
    if (reading.grouped) this.warnings.push(say.groupedNumber(this.text, whole(String(reading.value))));
    return { value: reading.value, number: match[0], unitText };
  }

  /** `AWG 18`: the one unit that people write in front. */
  private gaugeInFront(piece: string): Piece {
    const gauge = /^(?:awg|ga) ?(\d{1,2})$/i.exec(piece);
    if (gauge === null) throw this.notANumber();
    return { value: Number(gauge[1]), number: gauge[1]!, unitText: 'AWG' };
  }

  private unit(text: string, piece: Piece): Unit {
    const { dimension, bareUnit } = this.context;
    const likely = [...dimensions[dimension].likelyUnits];
    if (text === '') {
      this.bare = true;
      if (bareUnit !== null) return bareUnit;
      throw new Unreadable(say.missingUnit(this.text, piece.number, dimensionPhrase(dimension), likely));
    }
    const found = findUnits(text);
    if (found.length === 0) {
      if (/^-\s?\d/.test(text) || isDateText(this.normal))
        throw new Unreadable(say.malformedSpread(this.text));
      if (dimension === 'money') throw new Unreadable(say.currencyInCell(this.text, text));
      throw new Unreadable(say.unknownUnit(this.text, text, dimensionPhrase(dimension), likely));
    }
    const fitting = found.find((unit) => unit.dimension === dimension);
    if (fitting === undefined) {
      const suggestion = likelyUnit(found[0]!, dimension);
      throw new Unreadable(
        say.unitOfAnotherDimension(
          this.text,
          dimensionPhrase(found[0]!.dimension),
          dimensionPhrase(dimension),
          suggestion,
        ),
      );
    }
    if (fitting.slipFor !== null)
      this.warnings.push(say.quotientForProduct(this.text, text, fitting.slipFor));
    return fitting;
  }

  private done(nominal: number, spread: Spread | null, unit: Unit): ValueReading {
    return { ok: true, value: { nominal, spread }, unit, bare: this.bare, warnings: this.warnings };
  }

  private expected(): string {
    const likely = dimensions[this.context.dimension].likelyUnits[0];
    const phrase = dimensionPhrase(this.context.dimension);
    return likely === undefined ? phrase : `${phrase} such as 25 ${likely}`;
  }

  private notANumber(): Unreadable {
    const expected = this.expected();
    if (isSpreadsheetError(this.normal)) return new Unreadable(say.spreadsheetError(this.text, expected));
    if (isDateText(this.normal)) return new Unreadable(say.looksLikeADate(this.text, expected));
    if (/^(?:~|≈|ca\.?|c\.|about|approx\.?|circa|[<>≤≥]=?) ?\d/i.test(this.normal))
      return new Unreadable(say.estimateInWords(this.text, expected));
    return new Unreadable(say.notANumber(this.text, expected));
  }
}

function trimmed(value: number): string {
  return String(Number(value.toPrecision(6)));
}
