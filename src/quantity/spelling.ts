const minusSigns = /[\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/g;
const spaces = /[\s\u00a0\u1680\u2000-\u200b\u202f\u205f\u2060\u3000\ufeff]+/g;
const productSigns = /\s*[·⋅∙•*×\u00b7\u2027\u22c5]\s*/g;

/**
 * A cell as the value parser wants it: compatibility forms unified (NFKC), one kind of minus, space, ± and ellipsis.
 * The masculine ordinal stands for a degree sign, as on many keyboards.
 */
export function normalise(text: string): string {
  return text
    .replace(/º|˚/g, '°')
    .normalize('NFKC')
    .replace(minusSigns, '-')
    .replace(spaces, ' ')
    .replace(/ ?(\+\/ ?-|\+-|\+ \/ -|± ?) ?/g, '±')
    .replace(/\.{2,3}/g, '..')
    .trim();
}

/**
 * The key under which a unit is found: exponents plain, product signs as `·`, no spaces round `/` and between a number
 * and its unit (`s/60 deg`).
 */
export function unitKey(unit: string): string {
  return normalise(unit)
    .replace(/\^/g, '')
    .replace(/ per /g, '/')
    .replace(/\.(?= ?\/|$)/g, '')
    .replace(/ ?\/ ?/g, '/')
    .replace(productSigns, '·')
    .replace(/(\d) (?=[^\d])/g, '$1')
    .trim();
}

/** Other ways to write the same key: hyphen, dot, `x`, space or nothing where the product sign stands. */
export function unitKeyVariants(key: string): string[] {
  const separated = key.replace(/(?<=[a-zA-Z"])(?: ?[-.x] ?| )(?=[a-zA-Z"])/g, '·');
  return key === separated ? [key] : [key, separated];
}
