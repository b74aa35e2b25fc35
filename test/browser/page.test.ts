import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changedDemo } from '../cli/program.js';
import { hasBrowser, openReport, startBrowser, writeReport } from './browser.js';

let browser: Browser;
let still: string;
let interactive: string;
beforeAll(async () => {
  if (!hasBrowser) return;
  const study = changedDemo('study.csv', (text) => `${text.trimEnd()}\ndraws,200\n`);
  still = writeReport(study);
  interactive = writeReport(study, '--interactive');
  browser = await startBrowser();
}, 240_000);
afterAll(() => browser?.close());

/** Colour of the page behind everything, as three numbers. */
const ground = (page: Page) =>
  page.evaluate(() => getComputedStyle(document.body).backgroundColor.match(/\d+/g)!.map(Number));

describe.skipIf(!hasBrowser)(
  'the page in a browser (skipped where there is none)',
  { timeout: 120_000 },
  () => {
    it.each([
      ['still', 380],
      ['still', 1280],
      ['interactive', 380],
      ['interactive', 1280],
    ] as const)('the %s one complains of nothing and asks for nothing, %i px wide', async (which, width) => {
      const path = which === 'still' ? still : interactive;
      const { page, complaints } = await openReport(browser, path, { viewport: { width, height: 800 } });
      expect(complaints).toEqual([]);
      expect(await page.locator('script').count()).toBe(which === 'still' ? 0 : 2);
      // Proof that a complaint would be heard: the policy forbids an inline style.
      await page.evaluate(() => document.body.setAttribute('style', 'color: red'));
      await expect.poll(() => complaints.join(' ')).toMatch(/Content Security Policy/);
    });

    it.each(['still', 'interactive'])('the %s one does not scroll sideways on a telephone', async (which) => {
      const viewport = { width: 380, height: 800 };
      const { page } = await openReport(browser, which === 'still' ? still : interactive, { viewport });
      const found = await page.evaluate(() => {
        const sticksOut = (element: Element) => element.getBoundingClientRect().right > innerWidth + 1;
        const loose = [...document.querySelectorAll('body *')].filter(
          (element) => sticksOut(element) && element.closest('.scroll, .unseen, .skip') === null,
        );
        const scrolling = [...document.querySelectorAll('.scroll')].filter(
          (element) => element.scrollWidth > element.clientWidth + 1,
        );
        return {
          width: document.documentElement.scrollWidth,
          loose: loose.map((element) => element.outerHTML.slice(0, 80)),
          scrollingCount: scrolling.length,
        };
      });
      expect(found).toMatchObject({ width: 380, loose: [] });
      expect(found.scrollingCount).toBeGreaterThan(5);
    });

    it('a wide table is reached and scrolled with the keyboard alone', async () => {
      const { page } = await openReport(browser, still, { viewport: { width: 380, height: 800 } });
      await page.locator('.scroll').first().focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => page.evaluate(() => document.activeElement!.scrollLeft)).toBeGreaterThan(0);
    });

    it('the first key leads past the contents', async () => {
      const { page } = await openReport(browser, still);
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      // The browser goes there in its own time, after the key.
      await expect.poll(() => new URL(page.url()).hash).toBe('#report');
    });

    it('is light or dark as its reader’s system is, charts too, and light in print', async () => {
      const inkOfChart = (page: Page) =>
        page.evaluate(() => getComputedStyle(document.querySelector('svg [stroke="#17252f"]')!).stroke);
      const { page } = await openReport(browser, still, { colorScheme: 'light' });
      expect(await ground(page)).toEqual([255, 255, 255]);
      expect(await inkOfChart(page)).toBe('rgb(23, 37, 47)');
      await page.emulateMedia({ colorScheme: 'dark' });
      await expect.poll(async () => Math.max(...(await ground(page)))).toBeLessThan(50);
      const [red = 0] = (await inkOfChart(page)).match(/\d+/g)!.map(Number);
      expect(red).toBeGreaterThan(180);
      await page.emulateMedia({ colorScheme: 'dark', media: 'print' });
      await expect.poll(() => ground(page)).toEqual([255, 255, 255]);
    });

    it('draws charts for the width there is', async () => {
      const { page } = await openReport(browser, still, { viewport: { width: 380, height: 800 } });
      const shown = () =>
        page.evaluate(() =>
          ['.wide', '.narrow'].map(
            (name) => document.querySelector(`figure ${name}`)!.getClientRects().length,
          ),
        );
      expect(await shown()).toEqual([0, 1]);
      await page.setViewportSize({ width: 1280, height: 800 });
      await expect.poll(shown).toEqual([1, 0]);
    });
  },
);
