/** Widths of signs in the face of the page, as a share of the letter size; rounded to 0.04. */
const widths: [ems: number, signs: string][] = [
  [0.2, ' \u00a0'],
  [0.24, "',.:;ijl|·"],
  [0.28, '!If'],
  [0.32, '()-[]t{}°'],
  [0.36, '/\\r²³'],
  [0.4, '*s'],
  [0.44, '"?cxz'],
  [0.48, '#$+0123456789<=>FJLY^ekvy~–±×−é≥≤'],
  [0.52, 'ESTVXZ_agä'],
  [0.6, '&BDG'],
  [0.64, 'HNU'],
  [0.68, 'OQØ'],
  [0.72, 'Mw'],
  [0.8, 'W—✓✗→Ω'],
  [0.84, '%@m'],
  [0.96, '…'],
];

/** Letters that are not listed. */
const ordinary = 0.56;

/** Signs of scripts that fill a square each. */
const square = /[\u1100-\u11ff\u2e80-\ud7ff\uf900-\ufaff\uff00-\uff60]|\p{Emoji_Presentation}/u;

/** How much wider strong letters run. */
const strongRatio = 1.04;

const known = new Map(widths.flatMap(([ems, signs]) => [...signs].map((sign) => [sign, ems] as const)));

/** How wide a text runs in the page, to a few hundredths, in the unit of the size. */
export function textWidth(text: string, size: number, isStrong = false): number {
  let ems = 0;
  for (const sign of text) ems += known.get(sign) ?? (square.test(sign) ? 1 : ordinary);
  return ems * size * (isStrong ? strongRatio : 1);
}
