const month = '(?:jan|feb|mar|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-zä]*\\.?';
const datePatterns = [
  new RegExp(`^\\d{1,2}[-. /]+${month}(?:[-. /]+\\d{2,4})?$`, 'i'),
  new RegExp(`^${month}[-. /]+\\d{1,4}(?:,? \\d{2,4})?$`, 'i'),
  /^\d{4}-\d{1,2}-\d{1,2}(?:[T ]\d.*)?$/,
  /^\d{1,2}[./]\d{1,2}[./]\d{2,4}$/,
  /^\d{1,2}\/\d{1,4}$/,
  /^\d{1,2}:\d{2}(?::\d{2})?(?: ?[AP]M)?$/i,
];

/** Whether the text is what spreadsheets make of values such as 12-5 or 1/2: a date or a time of day. */
export function isDateText(text: string): boolean {
  return datePatterns.some((pattern) => pattern.test(text));
}

/** Whether the text is an error that a spreadsheet shows in place of a value. */
export function isSpreadsheetError(text: string): boolean {
  return /^(?:#(?:REF|NAME|VALUE|DIV\/0|N\/A|NUM|NULL|SPILL|CALC|WERT|BEZUG|ZAHL)[!?]?|#{3,})$/i.test(text);
}

/**
 * A calendar date as ISO text, or null when it is none or could be read in two ways.
 * Reads `2026-03-14` and `14.3.2026`.
 */
export function isoDate(text: string): string | null {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  const dayFirst = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(text);
  const [year, monthNumber, day] =
    iso !== null
      ? [Number(iso[1]), Number(iso[2]), Number(iso[3])]
      : dayFirst !== null
        ? [Number(dayFirst[3]), Number(dayFirst[2]), Number(dayFirst[1])]
        : [0, 0, 0];
  if (year < 1 || monthNumber < 1 || monthNumber > 12 || day < 1 || day > daysIn(year, monthNumber))
    return null;
  const pad = (value: number, width: number) => String(value).padStart(width, '0');
  return `${pad(year, 4)}-${pad(monthNumber, 2)}-${pad(day, 2)}`;
}

function daysIn(year: number, monthNumber: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return monthNumber === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(monthNumber) ? 30 : 31;
}
