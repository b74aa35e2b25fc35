import { beforeEach, describe, expect, it } from 'vitest';
import type { Box, Press } from '../../src/render/pdf/box.js';
import { Flow } from '../../src/render/pdf/flow.js';

/** What was drawn where: name, page, height on the page. */
let drawn: { name: string; page: number; y: number }[];
let pages: number;
let flow: Flow;

/** Pages of 100 points, text from 0 to 100. */
function press(): Press {
  const document = { addPage: () => pages++ };
  return {
    document,
    geometry: { width: 100, height: 100, left: 0, top: 0, textWidth: 100, bottom: 100 },
  } as unknown as Press;
}

function box(name: string, height: number, more: Partial<Box> = {}): Box {
  const draw = (_: number, y: number): void => void drawn.push({ name, page: pages, y });
  return { height, before: 0, after: 0, keepWithNext: false, draw, ...more };
}

const pageOf = (name: string): number | undefined => drawn.find((one) => one.name === name)?.page;

beforeEach(() => {
  drawn = [];
  pages = 0;
  flow = new Flow(press());
  flow.startSection('head', 'own-page');
});

describe('the flow of a page', () => {
  it('starts a page when a box does not fit', () => {
    flow.place([box('a', 60), box('b', 60)]);
    expect(drawn).toEqual([
      { name: 'a', page: 1, y: 0 },
      { name: 'b', page: 2, y: 0 },
    ]);
  });

  it('never leaves a heading at the foot of a page', () => {
    for (let filler = 1; filler < 100; filler += 7) {
      flow.startSection('head', 'own-page');
      drawn = [];
      flow.place([box('filler', filler), box('heading', 10, { keepWithNext: true }), box('text', 15)]);
      expect(pageOf('heading')).toBe(pageOf('text'));
    }
  });

  it('lets a short last box not go over the page alone', () => {
    flow.place([box('row 1', 60), box('row 2', 20), box('closing', 30)]);
    expect([pageOf('row 1'), pageOf('row 2'), pageOf('closing')]).toEqual([1, 2, 2]);
  });

  it('keeps a title, a head and the first row of a table together', () => {
    const kept = { keepWithNext: true };
    flow.place([
      box('filler', 75),
      box('title', 10, kept),
      box('head', 10, kept),
      box('row 1', 10),
      box('row 2', 10),
    ]);
    expect([pageOf('title'), pageOf('head'), pageOf('row 1')]).toEqual([2, 2, 2]);
  });

  it('repeats the head above a row that starts a page, and only there', () => {
    const repeated = { height: 10, draw: () => void drawn.push({ name: 'again', page: pages, y: 0 }) };
    const rows = Array.from({ length: 12 }, (_, index) => box(`row ${index}`, 12, { repeated }));
    flow.place([box('head', 10, { keepWithNext: true }), ...rows]);
    expect(drawn.filter((one) => one.name === 'again').map((one) => one.page)).toEqual([2]);
    expect(drawn.find((one) => one.page === 2 && one.name.startsWith('row'))!.y).toBe(10);
  });

  it('takes the larger of two white spaces, and none at the top of a page', () => {
    flow.place([box('a', 10, { before: 9, after: 3 }), box('b', 10, { before: 5 })]);
    expect(drawn.map((one) => one.y)).toEqual([0, 15]);
  });

  it('places what is higher than a page at the top of one instead of looping', () => {
    flow.place([box('a', 10), box('tall', 150), box('b', 10)]);
    expect(drawn.map((one) => [one.name, one.page])).toEqual([
      ['a', 1],
      ['tall', 2],
      ['b', 3],
    ]);
  });

  it('notes the running head of every page', () => {
    flow.place([box('a', 90), box('b', 90)]);
    flow.startSection('other', 'beneath');
    flow.place([box('c', 90)]);
    expect(flow.runningHeads).toEqual(['head', 'head', 'other']);
  });

  it('lets a section that saves paper stand beneath the few lines that another one left, under its own head', () => {
    flow.place([box('a', 90), box('tail', 20)]);
    flow.startSection('next', 'own-page-or-tail');
    flow.place([box('b', 30)]);
    expect(drawn.at(-1)).toEqual({ name: 'b', page: 2, y: 56 });
    expect(flow.runningHeads).toEqual(['head', 'next']);
  });

  it.each([
    ['that fill more of their page', [90, 40]],
    ['that are all there is of the section', [20]],
  ])('but not beneath lines %s', (_, heights) => {
    flow.place(heights.map((height) => box('before', height)));
    flow.startSection('next', 'own-page-or-tail');
    flow.place([box('b', 30)]);
    expect(drawn.at(-1)).toEqual({ name: 'b', page: heights.length + 1, y: 0 });
  });

  it('leaves the head of a page alone when what would stand beneath its few lines does not fit', () => {
    flow.place([box('a', 90), box('tail', 20)]);
    flow.startSection('next', 'own-page-or-tail');
    flow.place([box('heading', 10, { keepWithNext: true }), box('b', 60)]);
    expect(pageOf('heading')).toBe(3);
    expect(flow.runningHeads).toEqual(['head', 'head', 'next']);
  });
});
