import { type FactContainer, type FactItem, factItem, isFactContainer } from './facts-node.js';
import { type InlinePart, parseInline } from './inline.js';
import { nearestOf, TemplateError, type TemplateProblem } from './template-error.js';

type ParagraphStyle = 'body' | 'lead' | 'small' | 'answer';

/** A template as read: where everything stands, no values in it yet. */
export type TemplateNode = { line: number } & (
  | { kind: 'heading'; level: 1 | 2 | 3; parts: InlinePart[] }
  | { kind: 'paragraph'; style: ParagraphStyle; parts: InlinePart[] }
  | { kind: 'list'; ordered: boolean; items: { line: number; parts: InlinePart[] }[] }
  | { kind: 'blocks'; name: string }
  | { kind: 'chart'; name: string; title: InlinePart[]; caption: InlinePart[] }
  | { kind: 'image'; source: string; alternative: InlinePart[] }
  | { kind: 'when'; name: string; wanted: boolean; nodes: TemplateNode[] }
  | { kind: 'columns'; columns: { share: number; nodes: TemplateNode[] }[] }
  | { kind: 'facts'; container: FactContainer; columns: number; items: FactItem[] }
  | { kind: 'page-break' }
);

/** A wording as parsed, its placeholders still open. */
export interface ParsedTemplate {
  /** `name: value` lines between two `---` lines at the top. */
  settings: Record<string, { line: number; parts: InlinePart[] }>;
  nodes: TemplateNode[];
}

interface Line {
  number: number;
  text: string;
}

/**
 * Reads a wording template: Markdown with headings, paragraphs, lists, `> ` for the answer, `{{name}}` alone
 * on a line for whole blocks, `![question](chart:name "caption")`, `![words](picture.png)`, and containers closed by
 * `:::`: `::: when name`, `::: unless name`, `::: columns 3:2` (columns parted by `---`), `::: small`, `::: lead`, and
 * grids of `- label | value | note` in so many columns: `::: facts 2`, `::: headlines 3`, `::: blanks 2`.
 * A backslash at the end of a line begins a new one.
 *
 * @throws TemplateError with file and line of everything it cannot read
 */
export function parseTemplate(file: string, source: string): ParsedTemplate {
  const lines = withoutComments(source)
    .split(/\r?\n/)
    .map((text, index) => ({ number: index + 1, text: text.trimEnd() }));
  const problems: TemplateProblem[] = [];
  const note = (line: number, problem: string): void => {
    problems.push({ file, line, problem });
  };
  const settings = takeSettings(lines, note);
  const nodes = readNodes({ note, lines, at: 0 }, 'body', null);
  if (problems.length > 0) throw new TemplateError(problems);
  return { settings, nodes };
}

interface Reader {
  /** Takes note of a fault; reading goes on, so that all are told together. */
  note(line: number, problem: string): void;
  lines: Line[];
  at: number;
}

const settingNames = ['title', 'part', 'starts-page'];

function withoutComments(source: string): string {
  return source.replace(/<!--[\s\S]*?-->/g, (comment) => comment.replace(/[^\n]/g, ''));
}

function takeSettings(lines: Line[], note: Reader['note']): ParsedTemplate['settings'] {
  const settings: ParsedTemplate['settings'] = {};
  const start = lines.findIndex((line) => line.text !== '');
  if (lines[start]?.text !== '---') return settings;
  const end = lines.findIndex((line, index) => index > start && line.text === '---');
  if (end < 0) {
    note(lines[start]!.number, 'the settings that begin here are not closed by a second ---');
    return settings;
  }
  for (const line of lines.slice(start + 1, end)) {
    const match = /^([a-z][\w-]*)\s*:\s*(.*)$/.exec(line.text);
    if (match && settingNames.includes(match[1]!)) {
      settings[match[1]!] = { line: line.number, parts: parseInline(match[2]!) };
    } else if (line.text !== '') {
      const name = match?.[1] ?? line.text;
      note(line.number, `there is no setting ${name}${nearestOf(name, settingNames)}`);
    }
  }
  lines.splice(0, end + 1);
  return settings;
}

/** Reads until the end of the container that was opened at `openedAt`, or of the file. */
function readNodes(reader: Reader, style: ParagraphStyle, openedAt: number | null): TemplateNode[] {
  const nodes: TemplateNode[] = [];
  while (reader.at < reader.lines.length) {
    const line = reader.lines[reader.at]!;
    const ends = line.text === ':::' || line.text === '---';
    if (ends && openedAt !== null) return nodes;
    if (ends || line.text === '') reader.at++;
    else nodes.push(...readNode(reader, line, style));
    if (ends) reader.note(line.number, `this ${line.text} closes nothing`);
  }
  if (openedAt !== null) reader.note(openedAt, 'this ::: is never closed');
  return nodes;
}

function readNode(reader: Reader, line: Line, style: ParagraphStyle): TemplateNode[] {
  const number = line.number;
  const heading = /^(#{1,3})\s+(.*)$/.exec(line.text);
  const blocks = /^\{\{\s*([A-Za-z][\w.-]*)\s*\}\}$/.exec(line.text);
  const chart = /^!\[(.*)\]\(chart:([\w-]+)(?:\s+"(.*)")?\)$/.exec(line.text);
  const image = /^!\[(.*)\]\(([^)]*)\)$/.exec(line.text);
  if (line.text.startsWith(':::')) return readContainer(reader, line, style);
  if (/^(?:[-*]|\d+\.)\s/.test(line.text)) return [readList(reader)];
  if (!heading && !blocks && !chart && !image) return [readParagraph(reader, style)];
  reader.at++;
  if (blocks) return [{ kind: 'blocks', line: number, name: blocks[1]! }];
  if (chart) {
    const [title, caption] = [parseInline(chart[1]!), parseInline(chart[3] ?? '')];
    return [{ kind: 'chart', line: number, name: chart[2]!, title, caption }];
  }
  if (image) {
    return [{ kind: 'image', line: number, source: image[2]!.trim(), alternative: parseInline(image[1]!) }];
  }
  const level = heading![1]!.length as 1 | 2 | 3;
  return [{ kind: 'heading', line: number, level, parts: parseInline(heading![2]!) }];
}

function readParagraph(reader: Reader, style: ParagraphStyle): TemplateNode {
  const first = reader.lines[reader.at]!;
  const isAnswer = first.text.startsWith('> ');
  const texts: string[] = [];
  while (reader.at < reader.lines.length) {
    const text = reader.lines[reader.at]!.text;
    if (text === '' || text.startsWith(':::') || text.startsWith('![') || text === '---') break;
    texts.push(isAnswer ? text.replace(/^>\s?/, '') : text);
    reader.at++;
  }
  const parts = parseInline(texts.map(withLineEnd).join('').trimEnd());
  return { kind: 'paragraph', line: first.number, style: isAnswer ? 'answer' : style, parts };
}

/** Lines run on, except after a backslash. */
function withLineEnd(text: string): string {
  return /(?<!\\)\\$/.test(text) ? `${text.slice(0, -1)}\n` : `${text} `;
}

function readList(reader: Reader): TemplateNode {
  const first = reader.lines[reader.at]!;
  const items: { line: number; text: string }[] = [];
  while (reader.at < reader.lines.length) {
    const line = reader.lines[reader.at]!;
    const item = /^(?:[-*]|\d+\.)\s+(.*)$/.exec(line.text);
    if (item) items.push({ line: line.number, text: item[1]! });
    else if (/^\s+\S/.test(line.text)) items.at(-1)!.text += ` ${line.text.trim()}`;
    else break;
    reader.at++;
  }
  const parsed = items.map((item) => ({ line: item.line, parts: parseInline(item.text) }));
  return { kind: 'list', line: first.number, ordered: /^\d/.test(first.text), items: parsed };
}

const containerWords = [
  ...['columns', 'when', 'unless', 'small', 'lead', 'new-page'],
  ...['facts', 'headlines', 'blanks'],
];

function readContainer(reader: Reader, line: Line, style: ParagraphStyle): TemplateNode[] {
  const [, word = '', rest = ''] = /^:::\s*(\S*)\s*(.*)$/.exec(line.text)!;
  const number = line.number;
  reader.at++;
  if (word === 'new-page') return [{ kind: 'page-break', line: number }];
  if (word === 'columns') {
    const columns: { share: number; nodes: TemplateNode[] }[] = [];
    const shares = rest.split(':').map(Number);
    do {
      if (columns.length > 0) reader.at++;
      columns.push({ share: shares[columns.length] || 1, nodes: readNodes(reader, style, number) });
    } while (reader.lines[reader.at]?.text === '---');
    reader.at++;
    return [{ kind: 'columns', line: number, columns }];
  }
  const inner = word === 'small' || word === 'lead' ? word : style;
  const nodes = readNodes(reader, inner, number);
  while (reader.lines[reader.at]?.text === '---') {
    reader.note(reader.lines[reader.at]!.number, 'a --- parts columns only');
    reader.at++;
    nodes.push(...readNodes(reader, inner, number));
  }
  reader.at++;
  if (word === 'small' || word === 'lead') return nodes;
  if (isFactContainer(word)) return [factsOf(reader, number, word, Number(rest) || 1, nodes)];
  if (word === 'when' || word === 'unless') {
    return [{ kind: 'when', line: number, name: rest, wanted: word === 'when', nodes }];
  }
  reader.note(number, `::: ${word} is not known${nearestOf(word, containerWords)}`);
  return nodes;
}

function factsOf(
  reader: Reader,
  line: number,
  container: FactContainer,
  columns: number,
  nodes: TemplateNode[],
): TemplateNode {
  const items = nodes.flatMap((node) => {
    if (node.kind === 'list') return node.items.map(factItem);
    reader.note(node.line, `only lines that begin with - stand in ::: ${container}`);
    return [];
  });
  return { kind: 'facts', line, container, columns, items };
}
