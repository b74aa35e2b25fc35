import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changedDemo, demo } from '../cli/program.js';
import { hasBrowser, openReport, startBrowser, writeReport } from './browser.js';
import { drawnWords, faultsOf } from './drawn-words.js';

/** Least size of letters that can be read, CSS pixels. */
const leastPx = 10;

/** The first demo with names as long as people write them. */
const longNamed = () =>
  changedDemo('candidates.csv', (text) =>
    text
      .replaceAll('Servo as built', 'Servo as built for the winter market of two years ago')
      .replaceAll('Bigger servo', 'Bigger servo with the long horn and both brackets renewed')
      .replaceAll(
        'Screw actuator under the neck',
        'Screw actuator under the neck hinged to the shoulder frame',
      )
      .replaceAll('Short screw actuator', 'Short screw actuator behind the collar upside down'),
  );

/** The first demo with a day so long that packs are charged in it. */
const longDay = () =>
  changedDemo('day.csv', (text) =>
    text
      .replace('first half,50,show,no', 'first half,150,show,yes')
      .replace('pause,15,off,yes,no', 'pause,45,off,yes,yes'),
  );

const studies: [name: string, study: () => string, flags: string[]][] = [
  ['the first demo', () => demo, []],
  [
    'the second demo, which its reader may weigh otherwise,',
    () => join(demo, '..', 'stage-prop'),
    ['--interactive'],
  ],
  ['a study of long names', longNamed, []],
  ['a study of a long day, in other units,', longDay, ['--units', 'us']],
];

let browser: Browser;
beforeAll(async () => {
  if (hasBrowser) browser = await startBrowser();
});
afterAll(() => browser?.close());

describe.skipIf(!hasBrowser)('charts (skipped where there is no browser)', () => {
  it.each(studies)(
    'of %s have words that can be read, on a telephone and on a desk',
    async (_, study, flags) => {
      const path = writeReport(study(), ...flags);
      const { page } = await openReport(browser, path);
      for (const width of [380, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        const charts = await drawnWords(page);
        expect(charts.length).toBeGreaterThan(14);
        for (const { words } of charts) expect(words.length).toBeGreaterThan(4);
        expect(charts.flatMap((chart) => faultsOf(chart, leastPx))).toEqual([]);
      }
    },
    120_000,
  );
});
