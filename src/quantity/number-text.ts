/** What is known about the numbers of a file before one of them is read. */
export interface NumberStyle {
  /** Whether a decimal comma is accepted at all: not where commas separate the cells. */
  decimalComma: boolean;
  /** The decimal mark that the file's other numbers show; null when they show none, or both. */
  mark: '.' | ',' | null;
}

/** Texts that come from no file: decimal points only, nothing known from neighbours. */
export const plainStyle: NumberStyle = { decimalComma: false, mark: null };

/** A number read, or why it is none. `grouped`: a lone comma or dot was taken for a thousands mark. */
export type NumberReading =
  | { ok: true; value: number; grouped: boolean }
  | { ok: false; why: 'not-a-number' | 'ambiguous' | 'decimal-comma'; dotted: string; plain: string };

const groupedBySpaces = /^\d{1,3}(?:[ '’]\d{3})+(?=[.,]|$)/;
const loneGroup = /^[1-9]\d{0,2}[.,]\d{3}$/;

/** Pattern of a number at the start of a text, grouping and exponent included; no spaces but as thousands marks. */
export const numberPattern =
  /^[+-]? ?(?:\d{1,3}(?:[ '’]\d{3})+(?!\d)(?:[.,]\d+)?|\d+(?:[.,](?!\.)\d+)*|[.,]\d+)(?:[eE][+-]?\d+)?/;

/**
 * Reads a number with decimal point or comma and with thousands marks where they are unmistakable.
 *
 * @param text - as matched by {@link numberPattern}
 * @param style - what is known of the file
 */
export function readNumber(text: string, style: NumberStyle): NumberReading {
  const match = /^([+-]?) ?(.*?)([eE][+-]?\d+)?$/.exec(text)!;
  const sign = match[1] === '-' ? '-' : '';
  const exponent = match[3] ?? '';
  const digits = match[2]!.replace(groupedBySpaces, (group) => group.replace(/[ '’]/g, ''));
  const reading = readDigits(digits, style);
  const told = { dotted: sign + digits.replace(',', '.'), plain: sign + digits.replace(/[.,]/g, '') };
  if (typeof reading === 'string') return { ok: false, why: reading, ...told };
  const value = Number(sign + reading.digits + exponent);
  if (!Number.isFinite(value)) return { ok: false, why: 'not-a-number', ...told };
  return { ok: true, value: value === 0 ? 0 : value, grouped: reading.grouped };
}

type Digits = { digits: string; grouped: boolean } | 'not-a-number' | 'ambiguous' | 'decimal-comma';

function readDigits(digits: string, style: NumberStyle): Digits {
  const commas = digits.split(',').length - 1;
  const dots = digits.split('.').length - 1;
  if (commas > 0 && dots > 0) return readWithBothMarks(digits, style);
  if (commas > 1 || dots > 1) return ungrouped(digits, commas > 1 ? ',' : '.');
  if (commas === 1) {
    if (loneGroup.test(digits)) {
      if (style.mark === '.') return { digits: digits.replace(',', ''), grouped: true };
      if (style.mark === null || !style.decimalComma) return 'ambiguous';
    }
    return style.decimalComma ? { digits: digits.replace(',', '.'), grouped: false } : 'decimal-comma';
  }
  if (dots === 1 && style.mark === ',' && loneGroup.test(digits)) return 'ambiguous';
  return { digits, grouped: false };
}

function readWithBothMarks(digits: string, style: NumberStyle): Digits {
  const decimal = digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.';
  if (decimal === ',' && !style.decimalComma) return 'decimal-comma';
  const [whole, fraction, ...more] = digits.split(decimal);
  if (more.length > 0) return 'not-a-number';
  const plain = ungrouped(whole!, decimal === ',' ? '.' : ',');
  return typeof plain === 'string' ? plain : { digits: `${plain.digits}.${fraction}`, grouped: false };
}

function ungrouped(digits: string, mark: string): Digits {
  const groups = digits.split(mark);
  const regular = /^\d{1,3}$/.test(groups[0]!) && groups.slice(1).every((group) => /^\d{3}$/.test(group));
  return regular ? { digits: groups.join(''), grouped: false } : 'not-a-number';
}

/**
 * What the cells of a file show about its decimal mark: `0.17` shows a point, `0,17` a comma, `1,234` nothing.
 *
 * @param cells - all cells of the file
 * @param decimalComma - whether a decimal comma is accepted in this file
 */
export function numberStyleOf(cells: Iterable<string>, decimalComma: boolean): NumberStyle {
  let point = false;
  let comma = false;
  for (const cell of cells) {
    const match = /^\s*[+-]?(\d*)([.,])(\d+)(?![\d.,/:]|-\d)/.exec(cell);
    if (match === null) continue;
    const ambiguous = loneGroup.test(`${match[1]}${match[2]}${match[3]}`);
    if (match[2] === '.') point ||= !ambiguous || !decimalComma;
    else comma ||= !ambiguous;
  }
  if (!decimalComma) return { decimalComma, mark: point ? '.' : null };
  return { decimalComma, mark: point === comma ? null : point ? '.' : ',' };
}
