import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { emptyFolder, holdwright } from '../cli/program.js';

const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Whether there is a browser to test with. */
export const hasBrowser = existsSync(executablePath);
if (!hasBrowser) {
  process.stderr.write(
    `\nSKIPPED: no browser at ${executablePath}, so nothing of the HTML page is tested in one; set CHROMIUM to its path\n`,
  );
}

/** Starts the browser without anything that it does on its own. */
export function startBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath,
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** A page and everything it complained of or asked for since it was opened. */
export interface Watched {
  page: Page;
  /** Console messages, errors, and requests other than for the page itself. */
  complaints: string[];
}

/** Opens a report. */
export async function openReport(
  browser: Browser,
  path: string,
  options: BrowserContextOptions = {},
  address = '',
): Promise<Watched> {
  const page = await (await browser.newContext(options)).newPage();
  const complaints: string[] = [];
  const url = pathToFileURL(path).href + address;
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    if (request.url().split('#')[0] !== url.split('#')[0] && !request.url().startsWith('data:'))
      complaints.push(`asks for ${request.url()}`);
  });
  await page.goto(url);
  return { page, complaints };
}

/** Writes the report of a study with the built program, and gives the path of its page. */
export function writeReport(study: string, ...flags: string[]): string {
  const out = emptyFolder();
  const ended = holdwright(['report', study, '--out', out, '--format', 'html', ...flags]);
  if (ended.code !== 0) throw new Error(ended.stderr);
  return join(out, 'report.html');
}
