import type { Block, ChartBlock, Inline, ReportImage, Span } from '../document.js';
import { fillFacts } from './facts-node.js';
import { type InlinePart, plain, textOf } from './inline.js';
import type { ParsedTemplate, TemplateNode } from './parse-template.js';
import { gathered, nearestOf, templateError, unknownPlaceholder } from './template-error.js';

/** What a placeholder can stand for: words, a yes or no for `::: when`, or whole blocks. */
export type Value = string | boolean | { blocks: Block[] };
/** By the name that the placeholder has in the wording. */
export type Values = Record<string, Value>;

/** A chart ready to be put where the wording names it, still without title and caption. */
export type ChartContent = Omit<ChartBlock, 'title' | 'caption'>;

/** Everything a template may name. */
export interface Filling {
  values: Values;
  charts: Record<string, ChartContent>;
  /** Pictures by the name of their file; none where the section may hold none. */
  images?: Record<string, ReportImage>;
}

/**
 * Puts values, blocks and charts into a template.
 *
 * Every name in the template is checked, also inside a `::: when` that is left out.
 *
 * @throws TemplateError with file and line for a name that has no value here
 */
export function fillTemplate(file: string, template: ParsedTemplate, filling: Filling): Block[] {
  checkNames(file, template.nodes, filling);
  return fillNodes(file, template.nodes, filling);
}

/** Fills one line of running text, such as a title in a template's settings. */
export function fillLine(
  file: string,
  line: number,
  parts: InlinePart[],
  filling: { values: Values },
): Inline {
  const spans = parts.map((part): Span => {
    if ('text' in part) return { text: part.text, ...part.marks };
    const value = valueNamed(file, line, part.placeholder, filling.values);
    if (typeof value === 'string') return { text: value, ...part.marks };
    const problem = `{{${part.placeholder}}} is not text, it cannot stand inside a sentence`;
    throw templateError(file, line, problem);
  });
  return joinedSpans(spans);
}

/** Neighbours with the same emphasis become one run; empty ones go. */
function joinedSpans(spans: Span[]): Inline {
  const joined: Inline = [];
  for (const span of spans.filter(({ text }) => text !== '')) {
    const last = joined.at(-1);
    const isSame =
      last && !last.strong === !span.strong && !last.emphasis === !span.emphasis && !last.code === !span.code;
    if (isSame) last.text += span.text;
    else joined.push({ ...span });
  }
  return joined;
}

function valueNamed(file: string, line: number, name: string, values: Values): Value {
  if (Object.hasOwn(values, name)) return values[name]!;
  throw templateError(file, line, unknownPlaceholder(name, Object.keys(values)));
}

/** Fills every line, also those that a condition leaves out, and tells all faults together. */
function checkNames(file: string, nodes: TemplateNode[], filling: Filling): void {
  gathered(nodes.map((node) => () => checkNode(file, node, filling)));
}

function checkNode(file: string, node: TemplateNode, filling: Filling): void {
  switch (node.kind) {
    case 'when':
      valueNamed(file, node.line, node.name, filling.values);
      checkNames(file, node.nodes, filling);
      return;
    case 'columns':
      checkNames(
        file,
        node.columns.flatMap((column) => column.nodes),
        filling,
      );
      return;
    case 'list':
      gathered(node.items.map((item) => () => fillLine(file, item.line, item.parts, filling)));
      return;
    case 'chart':
      fillLine(file, node.line, [...node.title, ...node.caption], filling);
      return;
    default:
      fillNode(file, node, filling);
  }
}

function fillNodes(file: string, nodes: TemplateNode[], filling: Filling): Block[] {
  return nodes.flatMap((node) => fillNode(file, node, filling));
}

function fillNode(file: string, node: TemplateNode, filling: Filling): Block[] {
  switch (node.kind) {
    case 'heading': {
      const text = textOf(fillLine(file, node.line, node.parts, filling));
      return [{ kind: 'heading', level: node.level, text, id: headingId(text) }];
    }
    case 'paragraph': {
      const text = fillLine(file, node.line, node.parts, filling);
      return [{ kind: 'paragraph', style: node.style, text }];
    }
    case 'list': {
      const items = node.items.map((item) => fillLine(file, item.line, item.parts, filling));
      return [{ kind: 'list', ordered: node.ordered, items }];
    }
    case 'blocks':
      return fillBlocks(file, node, filling);
    case 'chart':
      return fillChartNode(file, node, filling);
    case 'when':
      return holds(filling.values[node.name]!) === node.wanted ? fillNodes(file, node.nodes, filling) : [];
    case 'columns':
      return fillColumns(file, node, filling);
    case 'facts':
      return fillFactsNode(file, node, filling);
    case 'image':
      return fillImage(file, node, filling);
    case 'page-break':
      return [{ kind: 'page-break' }];
  }
}

function fillBlocks(
  file: string,
  node: { line: number; name: string },
  filling: { values: Values },
): Block[] {
  const value = valueNamed(file, node.line, node.name, filling.values);
  if (typeof value === 'object') return value.blocks;
  if (typeof value === 'string') {
    return value === '' ? [] : [{ kind: 'paragraph', style: 'body', text: plain(value) }];
  }
  throw templateError(file, node.line, `{{${node.name}}} is a yes or no, for ::: when ${node.name}`);
}

function fillFactsNode(file: string, node: Parameters<typeof fillFacts>[0], filling: Filling): Block[] {
  return fillFacts(node, (line, parts) => textOf(fillLine(file, line, parts, filling)));
}

function fillChartNode(
  file: string,
  node: { line: number; name: string; title: InlinePart[]; caption: InlinePart[] },
  filling: Filling,
): Block[] {
  if (!Object.hasOwn(filling.charts, node.name)) {
    const hint = nearestOf(node.name, Object.keys(filling.charts), (name) => `chart:${name}`);
    throw templateError(file, node.line, `no chart is called chart:${node.name} in this section${hint}`);
  }
  const title = textOf(fillLine(file, node.line, node.title, filling));
  const caption = fillLine(file, node.line, node.caption, filling);
  return [{ ...filling.charts[node.name]!, title, caption }];
}

function fillImage(
  file: string,
  node: { line: number; source: string; alternative: InlinePart[] },
  filling: Filling,
): Block[] {
  const { images } = filling;
  if (images === undefined) {
    throw templateError(file, node.line, 'pictures can stand in report/letterhead.md only');
  }
  if (!Object.hasOwn(images, node.source)) {
    const hint = nearestOf(node.source, Object.keys(images));
    throw templateError(
      file,
      node.line,
      `there is no picture ${node.source} beside this file; a PNG or JPEG in the folder report/ is meant${hint}`,
    );
  }
  const alternative = textOf(fillLine(file, node.line, node.alternative, filling));
  if (alternative === '') {
    throw templateError(file, node.line, 'the picture needs words for who cannot see it: ![words](logo.png)');
  }
  return [{ kind: 'image', ...images[node.source]!, alternative }];
}

/** Columns without content are left out; a single one that is left takes the whole width. */
function fillColumns(
  file: string,
  node: { columns: { share: number; nodes: TemplateNode[] }[] },
  filling: Filling,
): Block[] {
  const columns = node.columns
    .map((column) => ({ share: column.share, blocks: fillNodes(file, column.nodes, filling) }))
    .filter((column) => column.blocks.length > 0);
  if (columns.length <= 1) return columns.flatMap((column) => column.blocks);
  return [{ kind: 'side-by-side', columns }];
}

function holds(value: Value): boolean {
  if (typeof value === 'object') return value.blocks.length > 0;
  return value !== '' && value !== false;
}

function headingId(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
