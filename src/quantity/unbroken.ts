/** Units that sentences are written with; a sum of money has a currency of three letters. */
const unit = String.raw`(?:[kmµ]?(?:A|V|W|Ω|g|m|s|N|J|Hz|Ah|Wh)|mm|cm|min|h|deg|rad|kg·cm|N·m|°C|%|oz|lb|lbf|oz·in|lb·in|in|ft|ft\/s|°F|rpm|dB|K|[A-Z]{3})(?!\p{L})`;

const betweenFigureAndUnit = new RegExp(String.raw`(?<=\d) (?=${unit})`, 'gu');

/** Where a line may end: at a plain space that does not part a figure from its unit. */
export const breakingSpace = new RegExp(String.raw`(?<!\d) | (?!${unit})`, 'gu');

/** The text with a no-break space between every figure and its unit: `4 m/s` stays on one line. */
export function keptWithUnits(text: string): string {
  return text.replace(betweenFigureAndUnit, '\u00a0');
}
