import { color, lab } from 'd3-color';
import { power } from '../../quantity/power.js';

/** Lightness of white paper and of black ink once they have changed places; 0…100. */
const [darkPaper, lightInk] = [9, 97];

/** Above 1, what is neither light nor dark is lifted from dark ground, where it would be lost. */
const lift = 1.3;

/** Little blue in what is dark, so that the page is not a grey hole. */
const tint = 3;

/**
 * A colour as it looks on dark ground: light and dark change places, the hue stays. What stood out from its ground
 * before stands out from it afterwards.
 * @returns null for a word that names no colour
 */
export function darkColour(light: string): string | null {
  const parsed = color(light);
  if (parsed === null) return null;
  const { l, a, b, opacity } = lab(parsed);
  const lightness = lightInk - (lightInk - darkPaper) * power(l / 100, lift);
  const turned = lab(lightness, a, b - tint * (1 - lightness / 100), opacity);
  return opacity < 1 ? turned.formatRgb() : turned.formatHex();
}
