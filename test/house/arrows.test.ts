import { describe, expect, it } from 'vitest';
import { type Import, importsOf } from './imports.js';
import { layerOf, sources, textOf } from './project.js';

/** Which folder may import from which others. Arrows run one way; a folder may always import from itself. */
const mayImport: Record<string, string[]> = {
  problem: [],
  quantity: ['problem'],
  sources: [],
  physics: ['quantity', 'sources'],
  drives: ['physics', 'quantity', 'sources'],
  study: ['drives', 'quantity'],
  input: ['study', 'drives', 'quantity', 'problem'],
  simulate: ['study', 'drives', 'physics', 'quantity'],
  assess: ['simulate', 'study', 'drives', 'physics', 'quantity', 'sources'],
  report: ['assess', 'simulate', 'study', 'drives', 'quantity', 'sources', 'problem'],
  page: ['assess'],
  render: ['report', 'quantity', 'problem', 'page'],
  archive: ['assess', 'problem'],
  app: [
    'problem',
    'quantity',
    'sources',
    'physics',
    'drives',
    'study',
    'input',
    'simulate',
    'assess',
    'report',
    'render',
    'archive',
  ],
  cli: ['app', 'archive', 'problem'],
};

/** Packages, and the only folders that may use each. */
const packageHomes: Record<string, string[]> = {
  papaparse: ['input', 'render'],
  'simple-statistics': ['assess', 'simulate'],
  vega: ['render'],
  'vega-lite': ['render'],
  'vega-interpreter': ['render'],
  'd3-color': ['render'],
  pdfkit: ['render'],
  'dejavu-fonts-ttf': ['render'],
  '@expo-google-fonts/source-sans-3': ['render'],
  '@cantoo/pdf-lib': ['archive'],
  '@fontsource/source-sans-3': ['render'],
  commander: ['cli'],
};

/** Folders where the same input always gives the same output: no files, no clock, no chance, no talk. */
const pureLayers = [
  'problem',
  'quantity',
  'sources',
  'physics',
  'drives',
  'study',
  'input',
  'simulate',
  'assess',
  'report',
];

const all = sources().flatMap(importsOf);
const packageOf = (specifier: string) =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
const say = ({ from, specifier }: Import) => `${from} imports ${specifier}`;

/** A type may also come from further down the same arrows: it leaves nothing behind in the program. */
function reachable(layer: string, seen = new Set<string>()): Set<string> {
  for (const next of mayImport[layer] ?? []) {
    if (seen.has(next)) continue;
    seen.add(next);
    reachable(next, seen);
  }
  return seen;
}

describe('arrows between folders', () => {
  it('every folder under src/ has a line in the table', () => {
    expect([...new Set(sources().map(layerOf))].filter((layer) => !(layer in mayImport))).toEqual([]);
  });

  it('the table itself has no circle', () => {
    expect(Object.keys(mayImport).filter((layer) => reachable(layer).has(layer))).toEqual([]);
  });

  it('imports run only along the arrows', () => {
    const crossing = all.filter(({ from, file, typeOnly }) => {
      if (file === null) return false;
      const [home, other] = [layerOf(from), layerOf(file)];
      if (home === other) return false;
      return typeOnly ? !reachable(home).has(other) : !mayImport[home]?.includes(other);
    });
    expect(crossing.map(say)).toEqual([]);
  });

  it('every import of a project file stays under src/ and names its extension', () => {
    const odd = all.filter(
      ({ file, specifier }) => file !== null && !(file.startsWith('src/') && /\.js(on)?$/.test(specifier)),
    );
    expect(odd.map(say)).toEqual([]);
  });
});

describe('packages', () => {
  it('each is used in its own folder only', () => {
    const stray = all.filter(({ from, specifier, file }) => {
      if (file !== null || specifier.startsWith('node:')) return false;
      return !packageHomes[packageOf(specifier)]?.includes(layerOf(from));
    });
    expect(stray.map(say)).toEqual([]);
  });

  it('each that package.json asks for is imported, or a file of it is looked up by its name', () => {
    const asked = Object.keys(JSON.parse(textOf('package.json')).dependencies);
    const imported = new Set(all.map(({ specifier }) => packageOf(specifier)));
    const lookedUp = sources('render/')
      .map(textOf)
      .filter((text) => text.includes('require.resolve('))
      .join('');
    const idle = asked.filter((name) => !imported.has(name) && !lookedUp.includes(`${name}/`));
    expect(idle).toEqual([]);
  });

  it('the parts of Node are named with their prefix', () => {
    const bare = all.filter(({ specifier }) =>
      /^(fs|path|os|url|util|crypto|process|buffer|stream|zlib)$/.test(specifier),
    );
    expect(bare.map(say)).toEqual([]);
  });

  it('pure layers import no part of Node', () => {
    const impure = all.filter(
      ({ from, specifier }) => pureLayers.includes(layerOf(from)) && specifier.startsWith('node:'),
    );
    expect(impure.map(say)).toEqual([]);
  });
});
