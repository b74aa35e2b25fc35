import { color, lab } from 'd3-color';
import { describe, expect, it } from 'vitest';
import { darkAreaColour, darkColour } from '../../../src/render/html/dark-colour.js';
import { cautionColours, palette } from '../../../src/render/palette.js';

/** Contrast of two colours as accessibility guidelines count it (WCAG 2, relative luminance). */
function contrast(one: string, other: string): number {
  const luminance = (name: string) => {
    const { r, g, b } = color(name)!.rgb();
    const [red, green, blue] = [r, g, b].map((part) => {
      const share = part / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const dark = (light: string) => darkColour(light)!;

describe('colours in the dark', () => {
  const texts = [palette.ink, palette.muted, palette.accent, palette.bad, '#2b3a42', '#4d5c64'];

  it.each(texts)('text in %s can be read on paper and on a band, in light and in dark', (text) => {
    for (const ground of ['#ffffff', palette.band]) {
      expect(contrast(text, ground)).toBeGreaterThan(4.5);
      expect(contrast(dark(text), dark(ground))).toBeGreaterThan(4.5);
    }
  });

  it.each(Object.entries(cautionColours))('the word of a %s box can be read on its band', (_, colours) => {
    expect(contrast(colours.word, colours.band)).toBeGreaterThan(4.5);
    expect(contrast(dark(colours.word), dark(colours.band))).toBeGreaterThan(4.5);
  });

  it.each(['#c2761b', '#d08a2e', '#8d9aa3', '#6f7d86'])(
    'a line in %s stands out from dark ground',
    (line) => {
      expect(contrast(dark(line), dark('#ffffff'))).toBeGreaterThan(3);
    },
  );

  const ranks = ['#0b3f49', '#2f7c88', '#85b5bc', '#c3dadd', '#eceff0'];
  const parts = ['#0b5d6b', '#dfa352', '#8e6f93', '#c8d4d8', '#5d7079', '#e3d3e6', '#f3e3c8'];

  it.each([...ranks, ...parts])('an area in %s stands out from dark ground', (area) => {
    expect(contrast(darkAreaColour(area)!, dark('#ffffff'))).toBeGreaterThanOrEqual(3);
  });

  it('areas that get paler from rank to rank on paper get dimmer in the dark, each told from the next', () => {
    const steps = ranks.map((area) => lab(darkAreaColour(area)!).l);
    for (const [index, step] of steps.slice(1).entries()) expect(step).toBeLessThan(steps[index]! - 4);
  });

  it.each(['#ffffff', '#eef2f3', '#f7f3ea'])('%s behind lines and words stays ground', (ground) => {
    expect(darkAreaColour(ground)).toBe(dark(ground));
  });

  it('light and dark change places', () => {
    expect(lab(dark('#ffffff')).l).toBeLessThan(15);
    expect(lab(dark('#000000')).l).toBeGreaterThan(90);
  });

  it('a word that names no colour has none', () => {
    expect([darkColour('none'), darkColour('url(#gradient)')]).toEqual([null, null]);
  });
});
