import { cautionColours, palette } from '../../palette.js';
import { darkAreaColour, darkColour } from '../dark-colour.js';

/** Colours of the page by the name under which the style sheet knows them. */
const named: Record<string, string> = {
  paper: '#ffffff',
  ...palette,
  ...Object.fromEntries(
    Object.entries(cautionColours).flatMap(([severity, colours]) =>
      Object.entries(colours).map(([part, colour]) => [`${severity}-${part}`, colour]),
    ),
  ),
};

/**
 * Colours of page and charts for light and dark surroundings. Charts carry their light colours themselves; in the
 * dark each is replaced. Print is always light.
 * @param chartColours as the drawings name them
 */
export function colourRules(chartColours: readonly string[]): string {
  const list = (change: (colour: string) => string) =>
    Object.entries(named)
      .map(([name, colour]) => `--${name}:${change(colour)}`)
      .join(';');
  const charts = chartColours.flatMap((colour) => {
    const dark = darkColour(colour);
    if (dark === null) return [];
    const lines = ['fill', 'stroke', 'stop-color'].map(
      (kind) => `svg [${kind}="${colour}"]{${kind}:${dark}}`,
    );
    return [...lines, `svg path[fill="${colour}"]{fill:${darkAreaColour(colour)}}`];
  });
  return `:root{color-scheme:light;${list((colour) => colour)}}
@media screen and (prefers-color-scheme:dark){
:root{color-scheme:dark;${list((colour) => darkColour(colour)!)}}
${charts.join('\n')}
}`;
}
