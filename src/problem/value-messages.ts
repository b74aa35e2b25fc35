import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';

/** A number is missing where one is expected. */
export function notANumber(received: string, expected: string): Trouble {
  return errorOf(
    'not-a-number',
    received,
    expected,
    `“${quoted(received)}” is not a number with a unit`,
    `write ${expected}; leave the cell blank when the value is not known`,
  );
}

/** `about 25 g`, `~25 g`, `< 5 mA`: an estimate written in words or signs. */
export function estimateInWords(received: string, expected: string): Trouble {
  return errorOf(
    'estimate-in-words',
    received,
    expected,
    `“${quoted(received)}” says that the figure is rough, in a way the tool does not read`,
    'write the figure with its spread: 25 g ±20%, or 20..30 g',
  );
}

/** A spreadsheet has turned the value into a date (or somebody wrote a fraction). */
export function looksLikeADate(received: string, expected: string): Trouble {
  return errorOf(
    'looks-like-a-date',
    received,
    expected,
    `“${quoted(received)}” is a date: a spreadsheet may have turned a value such as 12-5 or 1.5 into it`,
    'format the column as text, then type the value again; write a range as 5..12',
  );
}

/** `#REF!`, `#VALUE!`, `####`: what a spreadsheet shows when a formula failed or a column is narrow. */
export function spreadsheetError(received: string, expected: string): Trouble {
  return errorOf(
    'spreadsheet-error',
    received,
    expected,
    `“${quoted(received)}” is an error left by a spreadsheet, not a value`,
    'mend the formula in the spreadsheet and save the file again',
  );
}

/** `1,234 g`: one thousand or one point two? */
export function ambiguousNumber(received: string, dotted: string, plain: string): Trouble {
  return errorOf(
    'ambiguous-number',
    received,
    `${plain} or ${dotted}`,
    `“${quoted(received)}” can be read as ${dotted} and as ${plain}`,
    `write ${plain} or ${dotted}`,
  );
}

/** `1,234 g` in a file whose other numbers show what the mark means. */
export function groupedNumber(received: string, plain: string): Trouble {
  return warningOf(
    'grouped-number',
    received,
    plain,
    `“${quoted(received)}” is read as ${plain}, because the other numbers of this file have a decimal point`,
    `write ${plain}`,
  );
}

/** A decimal comma in a file whose cells are separated by commas. */
export function decimalComma(received: string, dotted: string): Trouble {
  return errorOf(
    'decimal-comma-in-comma-file',
    received,
    dotted,
    `“${quoted(received)}” has a decimal comma, but commas separate the cells of this file`,
    `write ${dotted}, or save the file with semicolons between the cells`,
  );
}

/** The same with the other places where a unit may stand: the head of the column, or a column of units. */
export function withUnitPlace(trouble: Trouble, elsewhere: string): Trouble {
  return { ...trouble, hint: `${trouble.hint} Or ${elsewhere}` };
}

/** A number without a unit where none is understood. */
export function missingUnit(received: string, number: string, quantity: string, likely: string[]): Trouble {
  const offers = likely.map((unit) => `${number} ${unit}`.trim());
  return errorOf(
    'missing-unit',
    received,
    listed(offers),
    `“${quoted(received)}” has no unit; ${quantity} is expected`,
    `did you mean ${listed(offers)}?`,
  );
}

/** Text after the number that is no known unit. */
export function unknownUnit(received: string, unit: string, quantity: string, likely: string[]): Trouble {
  const bare = `${quantity} as a bare number`;
  const voltage = /^(.*?)\s*(?:\bat|@)\s*(\d[\d.,]*\s*V)$/i.exec(unit);
  const usual = likely.length > 0 ? `for ${quantity}, use ${listed(likely)}` : `write ${bare}`;
  return errorOf(
    'unknown-unit',
    received,
    likely.length > 0 ? `${quantity} in ${listed(likely)}` : bare,
    `“${quoted(unit)}” in “${quoted(received)}” is not a unit the tool knows`,
    voltage === null
      ? usual
      : `the voltage of a listing has a column of its own: write ${quoted(voltage[2]!)} in rated_voltage`,
  );
}

/** A sum with its currency behind: that is said once, for the whole study. */
export function currencyInCell(received: string, currency: string): Trouble {
  return errorOf(
    'unknown-unit',
    received,
    'a sum of money as a bare number',
    `“${quoted(received)}” has a currency behind the sum`,
    `leave “${quoted(currency)}” out: all sums are in the currency of study.csv; name it there if it is blank`,
  );
}

/** Where a unit may stand: behind the number of a cell, in the brackets of a header, or in a column of its own. */
const unitPlaces = {
  cell: { subject: '', otherwise: 'write a bare number', place: 'behind the number' },
  header: { subject: 'the unit in ', otherwise: 'leave the unit out', place: 'in the brackets' },
  column: { subject: 'the unit in ', otherwise: 'leave the unit out', place: 'in the unit column' },
};

/**
 * A known unit, but of something else.
 * @param given what it measures
 * @param suggestion the unit that was probably meant; '' for none
 */
export function unitOfAnotherDimension(
  received: string,
  given: string,
  expected: string,
  suggestion: string,
  stands: keyof typeof unitPlaces = 'cell',
): Trouble {
  const { subject, otherwise, place } = unitPlaces[stands];
  return errorOf(
    'unit-of-another-dimension',
    received,
    expected,
    `${subject}“${quoted(received)}” is ${given}, ${expected} is expected${suggestion === '' ? '' : `: ${suggestion}?`}`,
    suggestion === '' ? otherwise : `if you meant ${suggestion}, write ${suggestion} ${place}`,
  );
}

/** `kg/cm`: a quotient where the trade means a product. */
export function quotientForProduct(received: string, written: string, meant: string): Trouble {
  return warningOf(
    'quotient-for-product',
    received,
    meant,
    `“${quoted(received)}”: ${written} is read as ${meant}`,
    `write ${meant}`,
  );
}

/** The signs are there, but they do not make a spread. */
export function malformedSpread(received: string): Trouble {
  return errorOf(
    'malformed-spread',
    received,
    'a spread such as ±15%, ±20 g, 0.3..0.5 or 0.3..0.4..0.5',
    `the spread in “${quoted(received)}” cannot be read`,
    'write 1.2 A ±15%, 420 g ±20 g, 0.3..0.5 A or 0.3..0.4..0.5 A',
  );
}

/** `0.5..0.3`. */
export function reversedRange(received: string): Trouble {
  return errorOf(
    'reversed-range',
    received,
    'the smaller figure first',
    `the range “${quoted(received)}” does not go upwards`,
    'write the smaller figure first: 0.3..0.5, or 0.3..0.4..0.5 with the likeliest in the middle',
  );
}

/** `20 % ±2 %`: a share of the value, or percentage points? */
export function shareOfAPercentage(received: string, range: string): Trouble {
  return warningOf(
    'share-of-a-percentage',
    received,
    range,
    `the spread in “${quoted(received)}” is taken as a share of the value: ${range}`,
    'for percentage points write a range such as 18..22 %',
  );
}

/** A value that cannot be, whatever the part. */
export function outOfBounds(received: string, shown: string, allowed: string): Trouble {
  return errorOf(
    'out-of-bounds',
    received,
    allowed,
    `“${quoted(received)}” is ${shown}, which cannot be: ${allowed} is expected`,
    'check the figure and its unit',
  );
}

/** A value far outside what such parts have. */
export function implausible(received: string, shown: string, usual: string): Trouble {
  return warningOf(
    'implausible',
    received,
    usual,
    `“${quoted(received)}” is ${shown}; usual is ${usual}`,
    'a slip of the unit? If the figure is right, nothing needs to be done',
  );
}

/** Words joined for a sentence: `a, b or c`. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}
