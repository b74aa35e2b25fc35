import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

/** The family of page and charts, the same as in print; signs it lacks come from the reader's own faces. */
export const family = "'Source Sans 3',system-ui,sans-serif";

const faces = [
  { weight: 400, style: 'normal' },
  { weight: 400, style: 'italic' },
  { weight: 600, style: 'normal' },
];

/** What the small files hold: Latin letters, figures and common signs. */
const range =
  'U+0-FF,U+131,U+152-153,U+2BB-2BC,U+2C6,U+2DA,U+2DC,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215';

/** Rules that carry the faces themselves, so that every reader sees the page and the charts as they were laid out. */
export async function faceRules(): Promise<string> {
  const require = createRequire(import.meta.url);
  const rules = faces.map(async ({ weight, style }) => {
    const file = `@fontsource/source-sans-3/files/source-sans-3-latin-${weight}-${style}.woff2`;
    const bytes = await readFile(require.resolve(file));
    const source = `url(data:font/woff2;base64,${bytes.toString('base64')}) format('woff2')`;
    return `@font-face{font-family:'Source Sans 3';font-weight:${weight};font-style:${style};src:${source};unicode-range:${range}}`;
  });
  return (await Promise.all(rules)).join('\n');
}
