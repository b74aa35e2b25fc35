import { describe, expect, it } from 'vitest';
import { checkChart } from '../../src/report/template/check-chart.js';
import type { TemplateError } from '../../src/report/template/template-error.js';
import { readTemplates } from './templates.js';

function faultsOf(specification: unknown, source = JSON.stringify(specification, null, 1)): string[] {
  try {
    checkChart('charts/x.json', source);
    return [];
  } catch (error) {
    return (error as TemplateError).problems.map(({ line, problem }) => `${line} ${/"[^"]+"/.exec(problem)}`);
  }
}

describe('a chart of the user', () => {
  it('may be every one that ships', () => {
    const charts = Object.entries(readTemplates()).filter(([name]) => name.startsWith('charts/'));
    expect(charts.length).toBeGreaterThan(15);
    for (const [name, source] of charts) expect(() => checkChart(name, source)).not.toThrow();
  });

  it.each([
    ['data from an address', { data: { url: 'https://example.org/x.csv' } }, '3 "url"'],
    ['data from a file, deep inside', { layer: [{ data: { url: '/etc/passwd' } }] }, '5 "url"'],
    ['a lookup', { transform: [{ lookup: 'a', from: { data: { url: 'x' } } }] }, '7 "url"'],
    ['pictures by a mark', { mark: 'image' }, '2 "image"'],
    ['pictures by a mark with settings', { mark: { type: 'image' } }, '3 "image"'],
    ['an address by a channel', { encoding: { url: { field: 'a' } } }, '3 "url"'],
    ['a link', { encoding: { href: { value: 'https://example.org' } } }, '3 "href"'],
    ['a loader of its own', { usermeta: { loader: {} } }, '3 "loader"'],
    ['rows without end', { data: { sequence: { start: 0, stop: 1e12 } } }, '3 "sequence"'],
  ])('is refused for %s, with the line', (_, specification, fault) => {
    expect(faultsOf(specification)).toEqual([fault]);
  });

  it('cannot hide a name behind an escape, and may use the words as words', () => {
    expect(faultsOf(null, '{\n "data": { "\\u0075\\u0072l": "x" } }')).toEqual(['2 "url"']);
    expect(faultsOf({ title: 'url', field: 'href', description: 'image "url": x' })).toEqual([]);
  });

  it('is told of everything at once', () => {
    expect(faultsOf({ mark: 'image', data: { url: 'a' }, href: 'b' })).toHaveLength(3);
  });
});
