import { type ChartPlace, type Json, placed } from './chart-place.js';
import {
  gathered,
  type Templates,
  templateError,
  templateText,
  unknownPlaceholder,
} from './template-error.js';

/**
 * Fills a Vega-Lite template with data and puts the common look under it.
 *
 * A string that is nothing but `{{name}}` becomes the value itself (rows, numbers, lists); elsewhere in a string the
 * value is written into it.
 *
 * @param name of the chart: `charts/<name>.json`
 * @param place for which the specification is wanted
 * @throws TemplateError with file and line for broken JSON or a name that has no value
 */
export function fillChart(
  templates: Templates,
  name: string,
  values: Record<string, unknown>,
  place: ChartPlace = 'wide',
): Record<string, unknown> {
  const specification = readJson(templates, `charts/${name}.json`, values, place);
  const theme = readJson(templates, 'charts/theme.json', {}, place);
  return { ...specification, config: { ...theme, ...(specification.config as object | undefined) } };
}

function readJson(templates: Templates, file: string, values: Record<string, unknown>, place: ChartPlace) {
  const source = templateText(templates, file);
  const parsed = placed(readChart(file, source), place);
  return substitute(file, source, parsed, values) as Record<string, unknown>;
}

/**
 * Reads a specification; its placeholders stay as they are.
 *
 * @throws TemplateError with file and line for broken JSON
 */
export function readChart(file: string, source: string): Json {
  const parsed = parseJson(file, source);
  if (parsed === null || typeof parsed !== 'object' || Array.isArray(parsed)) {
    throw templateError(file, 1, 'a chart is one JSON object: { … }');
  }
  return parsed;
}

function parseJson(file: string, source: string): Json {
  try {
    return JSON.parse(source) as Json;
  } catch (error) {
    const message = (error as Error).message;
    const line = lineAt(source, faultPosition(source, message));
    throw templateError(file, line, `not readable as JSON (${message.replaceAll('\n', ' ')})`);
  }
}

/** Where JSON reading stopped: engines say it as a position, or as the token with ten signs on either side. */
function faultPosition(source: string, message: string): number {
  const position = /position (\d+)/.exec(message);
  if (position) return Number(position[1]);
  const around = /Unexpected token '(.+?)', (\.\.\.)?"([\s\S]*)"(?:\.\.\.)? is not valid JSON/.exec(message);
  if (!around) return message.includes('end of JSON') ? source.length : 0;
  const [, token = '', cut, snippet = ''] = around;
  const start = source.indexOf(snippet);
  return start + (cut ? 10 : Math.max(0, snippet.lastIndexOf(token)));
}

function substitute(file: string, source: string, node: Json, values: Record<string, unknown>): unknown {
  if (typeof node === 'string') return substituteText(file, source, node, values);
  if (Array.isArray(node)) return gathered(node.map((item) => () => substitute(file, source, item, values)));
  if (node === null || typeof node !== 'object') return node;
  return Object.fromEntries(
    gathered(
      Object.entries(node).map(
        ([key, value]) =>
          () =>
            [key, substitute(file, source, value, values)] as const,
      ),
    ),
  );
}

function substituteText(file: string, source: string, text: string, values: Record<string, unknown>) {
  const named = (name: string): unknown => {
    if (Object.hasOwn(values, name)) return values[name];
    const line = lineAt(source, Math.max(0, source.search(new RegExp(`\\{\\{\\s*${name}\\s*\\}\\}`))));
    throw templateError(file, line, unknownPlaceholder(name, Object.keys(values)));
  };
  const whole = /^\{\{\s*([A-Za-z]\w*)\s*\}\}$/.exec(text);
  if (whole) return named(whole[1]!);
  return text.replace(/\{\{\s*([A-Za-z]\w*)\s*\}\}/g, (_, name: string) => String(named(name)));
}

function lineAt(source: string, position: number): number {
  return source.slice(0, position).split('\n').length;
}
