import { createHash } from 'node:crypto';
import type { Block, ReportDocument, Section } from '../../report/document.js';
import type { Weighing } from '../../report/weighing.js';
import { blockMarkup } from './blocks/block.js';
import { drawCharts } from './charts/draw-charts.js';
import { coloursOf } from './charts/tidy-svg.js';
import { contents, type Entry } from './contents.js';
import { type Child, element, htmlOf, Markup } from './markup.js';
import { newSheet, type Sheet } from './sheet.js';
import { colourRules } from './style/colours.js';
import { faceRules } from './style/faces.js';
import { pageStyle, shareRules } from './style/page.css.js';
import { pageCode } from './weighing/page-code.js';
import { weighingSection } from './weighing/weighing-section.js';

/**
 * Sets a report as one HTML page that needs nothing else: style, faces and charts are in it, and its own policy
 * forbids to fetch anything. The same document gives the same bytes.
 * @param weighing what a reader may set otherwise; without it the page has no script
 */
export async function renderHtml(
  report: ReportDocument,
  weighing: Weighing | null = null,
): Promise<Uint8Array> {
  const sheet = newSheet(await drawCharts(report));
  const { head, rest } = pageHead(report, sheet);
  const sections = rest.map((section) => sectionMarkup(sheet, section));
  if (weighing) sections.splice(1, 0, weighingPart(sheet, weighing));
  const script = weighing ? await pageCode() : null;
  const page = element(
    'div',
    { class: 'page' },
    element('header', {}, head),
    contents(
      report,
      sections.map(({ entry }) => entry),
    ),
    element('main', { id: 'report' }, parted(report, sections)),
    element(
      'footer',
      {},
      element('p', {}, [report.footer, report.author, report.date].filter((text) => text !== '').join(' · ')),
    ),
  );
  const drawings = [...sheet.charts.values()].flatMap(({ wide, narrow }) => [wide, narrow]);
  const style = [
    await faceRules(),
    colourRules(coloursOf(drawings)),
    pageStyle.trim(),
    shareRules(sheet.shares),
  ].join('\n');
  const html = `<!doctype html>\n${htmlOf(
    element(
      'html',
      { lang: report.language },
      documentHead(report, style, script),
      element(
        'body',
        {},
        element('a', { class: 'skip', href: '#report' }, 'Skip to the report'),
        page,
        script === null ? null : element('script', {}, new Markup(script)),
      ),
    ),
  )}\n`;
  return new TextEncoder().encode(html);
}

/** A browser with this policy shows what is in the page, runs its one script if there is one, and fetches nothing. */
function policyFor(style: string, script: string | null): string {
  const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  const scripts = script === null ? '' : ` script-src ${hash(script)};`;
  return `default-src 'none'; style-src ${hash(style)};${scripts} img-src data:; font-src data:; base-uri 'none'; form-action 'none'`;
}

function documentHead(report: ReportDocument, style: string, script: string | null): Markup {
  const meta = (name: string, content: string) =>
    content === '' ? null : element('meta', { name, content });
  return element(
    'head',
    {},
    element('meta', { charset: 'utf-8' }),
    element('meta', { 'http-equiv': 'Content-Security-Policy', content: policyFor(style, script) }),
    meta('viewport', 'width=device-width, initial-scale=1'),
    element('title', {}, report.title),
    meta('description', report.subject),
    meta('author', report.author),
    meta('keywords', report.keywords.join(', ')),
    meta('generator', 'holdwright'),
    meta('color-scheme', 'light dark'),
    // Written by us alone: no word of the report gets into it.
    element('style', {}, new Markup(style)),
  );
}

/** What stands before the first heading, and the heading itself, is the head of the page. */
function pageHead(report: ReportDocument, sheet: Sheet): { head: Child; rest: Section[] } {
  const [first, ...others] = report.sections;
  const at = first?.blocks.findIndex((block) => block.kind === 'heading') ?? -1;
  const top = at < 0 ? undefined : (first!.blocks[at] as Extract<Block, { kind: 'heading' }>);
  if (!first || top?.level !== 1) return { head: element('h1', {}, report.title), rest: report.sections };
  sheet.heading = { level: 1, text: top.text };
  const before = first.blocks.slice(0, at).map((block) => blockMarkup(sheet, block));
  return {
    head: [before, element('h1', {}, top.text)],
    rest: [{ ...first, blocks: first.blocks.slice(at + 1) }, ...others],
  };
}

interface SetSection {
  entry: Entry;
  markup: Markup;
}

function weighingPart(sheet: Sheet, weighing: Weighing): SetSection {
  const { id, markup } = weighingSection(sheet, weighing);
  return { entry: { id, title: weighing.title, part: 'answer' }, markup };
}

function sectionMarkup(sheet: Sheet, section: Section): SetSection {
  const id = sheet.idFor(section.title);
  sheet.heading = { level: 0, text: section.title };
  const blocks = section.blocks.map((block) => blockMarkup(sheet, block));
  const starts = section.startsPage ? 'starts-page' : null;
  const markup = element('section', { id, class: starts, 'aria-label': section.title }, blocks);
  return { entry: { id, title: section.title, part: section.part }, markup };
}

/** The sections, with a word where the appendix begins. */
function parted(report: ReportDocument, sections: SetSection[]): Child {
  const first = sections.findIndex(({ entry }) => entry.part === 'appendix');
  return sections.map(({ markup }, index) =>
    index === first && index > 0 ? [element('p', { class: 'part' }, report.appendixTitle), markup] : markup,
  );
}
