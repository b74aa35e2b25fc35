import { describe, expect, it } from 'vitest';
import { fillChart } from '../../src/report/template/fill-chart.js';
import { type Filling, fillTemplate } from '../../src/report/template/fill-template.js';
import { parseTemplate } from '../../src/report/template/parse-template.js';
import { readPhrases } from '../../src/report/template/phrases.js';
import { blocksText } from './document-text.js';

const filling: Filling = {
  values: { name: 'heron', note: '', yes: true, no: false, table: { blocks: [{ kind: 'page-break' }] } },
  charts: {},
};

function fill(source: string, values: Partial<Filling['values']> = {}) {
  const merged = { ...filling, values: { ...filling.values, ...values } as Filling['values'] };
  return fillTemplate('report/x.md', parseTemplate('report/x.md', source), merged);
}

describe('a wording template', () => {
  it('gives headings, paragraphs, lists and emphasis', () => {
    const blocks = fill('# The {{name}}\n\nIt is **big** and *slow*.\n\n- one\n- two\n  more\n\n1. first\n');
    expect(blocks.map((block) => block.kind)).toEqual(['heading', 'paragraph', 'list', 'list']);
    expect(blocks[1]).toMatchObject({
      text: [
        { text: 'It is ' },
        { text: 'big', strong: true },
        { text: ' and ' },
        { text: 'slow', emphasis: true },
        { text: '.' },
      ],
    });
    expect(blocks[2]).toMatchObject({ ordered: false, items: [[{ text: 'one' }], [{ text: 'two more' }]] });
    expect(blocks[3]).toMatchObject({ ordered: true });
  });

  it('never reads what stands in a value as Markdown or as a placeholder', () => {
    const blocks = fill('Say {{name}}.', { name: '**# {{no}} ![x](chart:y)' });
    expect(blocksText(blocks)).toBe('Say **# {{no}} ![x](chart:y).');
  });

  it('names file and line of a wrong placeholder and the nearest right one', () => {
    expect(() => fill('# Title\n\nThe {{nmae}} moves.')).toThrow(
      'templates/report/x.md, line 3: nothing is called {{nmae}}; did you mean {{name}}?',
    );
  });

  it('finds a wrong placeholder also in a part that is left out, in a list and in a chart title', () => {
    expect(() => fill('::: when no\n{{nmae}} x\n:::')).toThrow('line 2');
    expect(() => fill('- a\n- b {{nmae}}')).toThrow('line 2');
    expect(() => fill('![{{nmae}}](chart:a)')).toThrow('line 1');
    expect(() => fill('::: when nmae\nx\n:::')).toThrow('line 1');
  });

  it('names file and line of a chart nobody draws and of a container nobody closes or knows', () => {
    expect(() => fill('\n![What?](chart:nothing)')).toThrow(
      'report/x.md, line 2: no chart is called chart:nothing',
    );
    expect(() => fill('text\n\n::: when yes\nmore')).toThrow('line 3: this ::: is never closed');
    expect(() => fill('::: wehn yes\nx\n:::')).toThrow('::: wehn is not known');
  });

  it('refuses blocks inside a sentence and a yes or no in place of blocks', () => {
    expect(() => fill('see {{table}} here')).toThrow('{{table}} is not text');
    expect(() => fill('{{yes}}')).toThrow('is a yes or no');
  });

  it('leaves out what a condition excludes; an empty text counts as no', () => {
    expect(blocksText(fill('::: when note\na\n:::\n\n::: unless note\nb\n:::'))).toBe('b');
    expect(blocksText(fill('::: when yes\na\n\n::: when no\nc\n:::\n:::'))).toBe('a');
  });

  it('sets columns side by side and drops empty ones', () => {
    const two = fill('::: columns 3:2\nleft\n---\nright\n:::');
    expect(two).toMatchObject([{ kind: 'side-by-side', columns: [{ share: 3 }, { share: 2 }] }]);
    const one = fill('::: columns 3:2\nleft\n---\n{{note}}\n:::');
    expect(one.map((block) => block.kind)).toEqual(['paragraph']);
  });

  it('keeps counting lines over comments and settings', () => {
    expect(() => fill('---\ntitle: x\n---\n<!-- two\nlines -->\n{{nmae}} x')).toThrow('line 6');
  });
});

describe('a phrase', () => {
  const phrases = readPhrases({ 'report/phrases.md': '## greet\n\nHello {{who}}.\n\n## bare\n\n{{who}}\n' });

  it('is found by its name and filled', () => {
    expect(phrases('greet', { who: 'heron' })).toBe('Hello heron.');
    expect(phrases('bare', { who: 'heron' })).toBe('heron');
  });

  it('names file and line when a value or the phrase itself is missing', () => {
    expect(() => phrases('greet', { whom: 'x' })).toThrow('templates/report/phrases.md, line 3');
    expect(() => phrases('part')).toThrow('there is no text "## part"; known here: bare, greet');
  });
});

describe('a chart template', () => {
  const theme = { 'charts/theme.json': '{ "font": "F" }' };

  it('takes rows and numbers as they are and writes words into words', () => {
    const templates = { ...theme, 'charts/a.json': '{ "data": "{{rows}}", "title": "up to {{end}} min" }' };
    expect(fillChart(templates, 'a', { rows: [{ x: 1 }], end: 5 })).toEqual({
      data: [{ x: 1 }],
      title: 'up to 5 min',
      config: { font: 'F' },
    });
  });

  it('names file and line of a wrong placeholder, of broken JSON and of a missing file', () => {
    const templates = {
      ...theme,
      'charts/a.json': '{\n  "a": 1,\n  "b": "{{rwos}}"\n}',
      'charts/b.json': '{\n "a": }',
    };
    expect(() => fillChart(templates, 'a', { rows: [] })).toThrow('templates/charts/a.json, line 3');
    expect(() => fillChart(templates, 'b', {})).toThrow(
      'templates/charts/b.json, line 2: not readable as JSON',
    );
    expect(() => fillChart(templates, 'c', {})).toThrow(
      'templates/charts/c.json, line 1: there is no such template',
    );
  });
});
