import { color, lab } from 'd3-color';
import { power } from '../../quantity/power.js';

/** Lightness of white paper and of black ink once they have changed places; 0…100. */
const [darkPaper, lightInk] = [9, 97];

/** Above 1, what is neither light nor dark is lifted from dark ground, where it would be lost. */
const lift = 1.3;

/** Lightness from which a filled area is ground: bands behind the lines, and paper under words. */
const groundLightness = 95;

/** Lightness below which no area that means something falls on dark ground: a contrast of 3 with the page. */
const dimmestArea = 44;

/** Little blue in what is dark, so that the page is not a grey hole. */
const tint = 3;

/**
 * A colour as it looks on dark ground: light and dark change places, the hue stays. What stood out from its ground
 * before stands out from it afterwards.
 * @returns null for a word that names no colour
 */
export function darkColour(light: string): string | null {
  return turned(light, darkPaper);
}

/**
 * The colour of a filled area on dark ground. What is pale on paper has an outline or a neighbour there, and would
 * drown in the dark: it stays in its order of lightness, but comes no nearer to the ground than a contrast of 3.
 * @returns null for a word that names no colour
 */
export function darkAreaColour(light: string): string | null {
  const parsed = color(light);
  const isGround = parsed !== null && lab(parsed).l >= groundLightness;
  return turned(light, isGround ? darkPaper : dimmestArea);
}

/** @param dimmest lightness that white turns into */
function turned(light: string, dimmest: number): string | null {
  const parsed = color(light);
  if (parsed === null) return null;
  const { l, a, b, opacity } = lab(parsed);
  const lightness = lightInk - (lightInk - dimmest) * power(l / 100, lift);
  const dark = lab(lightness, a, b - tint * (1 - lightness / 100), opacity);
  return opacity < 1 ? dark.formatRgb() : dark.formatHex();
}
