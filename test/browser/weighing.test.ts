import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assessStudy } from '../../src/app/study.js';
import { request } from '../app/demo.js';
import { changedDemo, holdwright } from '../cli/program.js';
import { hasBrowser, openReport, startBrowser, writeReport } from './browser.js';

const drawCount = 200;
let browser: Browser;
let study: string;
let report: string;
beforeAll(async () => {
  if (!hasBrowser) return;
  study = changedDemo('study.csv', (text) => `${text.trimEnd()}\ndraws,${drawCount}\n`);
  report = writeReport(study, '--interactive');
  browser = await startBrowser();
}, 240_000);
afterAll(() => browser?.close());

/** A line of a ranking: who, with which score, leading in which share of the draws. */
interface Line {
  id: string;
  score: string;
  leads: number;
}

/** The ranking as the page shows it. */
const shown = (page: Page): Promise<Line[]> =>
  page.locator('[data-part="rows"] tr').evaluateAll((rows) =>
    rows.map((row) => ({
      id: (row as HTMLElement).dataset.candidate!,
      score: row.querySelector('.score')!.textContent!,
      leads: Number((row as HTMLElement).dataset.leads),
    })),
  );

/** The ranking as the command computes it with changes. */
function computed(changes: string[]): Line[] {
  const files = readdirSync(study)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => ({ name, bytes: readFileSync(join(study, name)) }));
  const result = assessStudy(request(files, changes), 'ranking');
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  const { candidates, certainty } = result.value;
  return candidates.map(({ id, score }) => ({
    id,
    score: score.toFixed(2),
    leads: certainty!.candidates[id]!.leadProbability!,
  }));
}

/** Worths are rounded to 16 bits in the page: in a draw where two scores agree so far, another may lead. */
const oneDraw = 1.01 / drawCount;

function expectSame(page: Line[], command: Line[]): void {
  expect(page.map(({ id, score }) => [id, score])).toEqual(command.map(({ id, score }) => [id, score]));
  page.forEach(({ leads }, index) => {
    expect(Math.abs(leads - command[index]!.leads)).toBeLessThan(oneDraw);
  });
}

const settings: [address: string, changes: string[]][] = [
  ['', []],
  ['runtime=decisive', ['runtime.weight=decisive']],
  ['runtime=none', ['runtime.weight=none']],
  ['off=torque_margin', ['torque_margin.must=']],
  ['off=runtime&off=body_mass', ['runtime.must=', 'body_mass.must=']],
  ['cost=decisive&rework_hours=decisive', ['cost.weight=decisive', 'rework_hours.weight=decisive']],
  ['hold_power=much&off=torque_margin', ['hold_power.weight=much', 'torque_margin.must=']],
  [
    'runtime=little&body_mass=decisive&cue_fidelity=none&off=cue_fidelity',
    ['runtime.weight=little', 'body_mass.weight=decisive', 'cue_fidelity.weight=none', 'cue_fidelity.must='],
  ],
  [
    'runtime=none&body_mass=none&cue_fidelity=none&rework_hours=none&hold_power=none',
    ['runtime', 'body_mass', 'cue_fidelity', 'rework_hours', 'hold_power'].map((id) => `${id}.weight=none`),
  ],
  [
    'cue_fidelity=much&off=runtime&off=body_mass&off=cue_fidelity&off=cost&off=torque_margin',
    [
      'cue_fidelity.weight=much',
      ...['runtime', 'body_mass', 'cue_fidelity', 'cost', 'torque_margin'].map((id) => `${id}.must=`),
    ],
  ],
];

describe.skipIf(!hasBrowser)(
  'ranking again in the page (skipped without a browser)',
  { timeout: 120_000 },
  () => {
    it.each(settings)('gives what the command gives: %s', async (address, changes) => {
      const { page, complaints } = await openReport(browser, report, {}, `#${address}`);
      expectSame(await shown(page), computed(changes));
      expect(complaints).toEqual([]);
    });

    it('moves: no two of these settings give the same', async () => {
      const seen = new Set<string>();
      for (const [address] of settings) {
        const { page } = await openReport(browser, report, {}, `#${address}`);
        seen.add(JSON.stringify(await shown(page)));
      }
      expect(seen.size).toBe(settings.length);
    });

    it('prints a command that runs as it stands and ranks the same', async () => {
      const { page } = await openReport(browser, report, {}, '#runtime=much&cost=none&off=torque_margin');
      const command = await page.locator('[data-part="command"]').textContent();
      const words = command!.replace('<study>', study).split(' ').slice(1);
      const { stdout, code } = holdwright([...words, '--json']);
      expect(code).toBe(0);
      const { candidates, certainty } = JSON.parse(stdout);
      const lines = candidates.map(({ id, score }: { id: string; score: number }) => ({
        id,
        score: score.toFixed(2),
        leads: certainty.candidates[id].leadProbability,
      }));
      expectSame(await shown(page), lines);
    });

    it('works with the keyboard alone, says the new order, and keeps it in the address', async () => {
      const { page } = await openReport(browser, report);
      const before = await shown(page);
      const status = page.locator('[role="status"]');
      const saidBefore = await status.textContent();
      await page.locator('input[name="weight-cost"]:checked').focus();
      for (let step = 0; step < 5; step++) await page.keyboard.press('ArrowRight');
      expect(await page.locator('input[name="weight-cost"]:checked').inputValue()).toBe('decisive');
      while (
        (await page.evaluate(() => (document.activeElement as HTMLInputElement).name)) !==
        'limit-torque_margin'
      )
        await page.keyboard.press('Tab');
      await page.keyboard.press('Space');
      await expect.poll(() => new URL(page.url()).hash).toBe('#cost=decisive&off=torque_margin');
      const after = await shown(page);
      expect(after).not.toEqual(before);
      expect(await status.textContent()).not.toBe(saidBefore);

      const again = await openReport(browser, report, {}, new URL(page.url()).hash);
      expect(await shown(again.page)).toEqual(after);

      while ((await page.evaluate(() => document.activeElement!.tagName)) !== 'BUTTON')
        await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await expect.poll(() => new URL(page.url()).hash).toBe('');
      expect(await shown(page)).toEqual(before);
      expect(await status.textContent()).toBe(saidBefore);
    });

    it('refuses to rank when nothing counts, as the command does', async () => {
      const ids = ['runtime', 'body_mass', 'cue_fidelity', 'rework_hours', 'cost', 'hold_power'];
      const { page } = await openReport(browser, report, {}, `#${ids.map((id) => `${id}=none`).join('&')}`);
      expect(await page.locator('[role="status"]').textContent()).toMatch(/^Nothing counts/);
      expect(await page.locator('[data-part="result"]').isVisible()).toBe(false);
      const { code, stderr } = holdwright([
        'rank',
        study,
        ...ids.flatMap((id) => ['--set', `${id}.weight=none`]),
      ]);
      expect(code).toBe(3);
      expect(stderr).toContain('no criterion has a weight above 0');
    });

    it('passes over what an address says of things that are not there', async () => {
      const { page, complaints } = await openReport(
        browser,
        report,
        {},
        '#nonsense=much&off=<b>&runtime=x&cost=none',
      );
      expect(new URL(page.url()).hash).toContain('cost=none');
      expectSame(await shown(page), computed(['cost.weight=none']));
      expect(complaints).toEqual([]);
    });

    it('shows no ranking without its script, and says why', async () => {
      const { page } = await openReport(browser, report, { javaScriptEnabled: false });
      expect(await page.locator('form').isVisible()).toBe(false);
      expect(await page.getByText('needs JavaScript').isVisible()).toBe(true);
    });
  },
);
