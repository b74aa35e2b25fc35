import type { ChartBlock } from '../../report/document.js';
import type { DrawnChart } from './charts/draw-charts.js';

/** What blocks need to know of the page around them. */
export interface Sheet {
  charts: Map<ChartBlock, DrawnChart>;
  /** Shares of side-by-side blocks that were met, each as `8-5`: each gets a line in the style sheet. */
  shares: Set<string>;
  /** Gives every part an id that no other has. */
  idFor(text: string): string;
  /** Level and words of the last heading, and the level that the wording gives it. */
  heading: { level: number; written?: number; text: string };
}

/** A page without any part so far. */
export function newSheet(charts: Map<ChartBlock, DrawnChart>): Sheet {
  const taken = new Set<string>();
  return { charts, shares: new Set(), idFor: (text) => freeId(text, taken), heading: { level: 0, text: '' } };
}

/** Letters, figures and hyphens only, so that an id is the same in HTML, in CSS and in an address. */
function freeId(text: string, taken: Set<string>): string {
  const plain = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  const base = plain === '' ? 'part' : plain;
  let id = base;
  for (let count = 2; taken.has(id); count++) id = `${base}-${count}`;
  taken.add(id);
  return id;
}
