import type { ChartBlock } from '../../report/document.js';
import type { ArchivalDocument } from './archival-document.js';
import type { PreparedChart } from './chart/prepare-chart.js';
import type { Geometry } from './style.js';
import type { Tags } from './tags.js';
import type { Typesetter } from './typesetter.js';

/** Everything that a block needs to measure and draw itself. */
export interface Press {
  document: ArchivalDocument;
  typesetter: Typesetter;
  tags: Tags;
  geometry: Geometry;
  charts: Map<ChartBlock, PreparedChart>;
}

/** A piece of a page that is never cut. */
export interface Box {
  height: number;
  /** White space wanted above and below; the larger of two neighbours counts. */
  before: number;
  after: number;
  /** Never the last on a page: what follows comes along. */
  keepWithNext: boolean;
  draw(x: number, y: number): void;
  /** Drawn again above this box when it starts a page: the head of a table. */
  repeated?: { height: number; draw(x: number, y: number): void };
}

/** Height of boxes under each other, white space included. */
export function stackHeight(boxes: Box[]): number {
  return boxes.reduce((sum, box, index) => sum + box.height + gapBetween(boxes[index - 1], box), 0);
}

/** White space between two boxes. */
export function gapBetween(above: Box | undefined, below: Box): number {
  return above ? Math.max(above.after, below.before) : 0;
}

/** Draws boxes under each other. */
export function drawStack(boxes: Box[], x: number, y: number): void {
  let at = y;
  boxes.forEach((box, index) => {
    at += gapBetween(boxes[index - 1], box);
    box.draw(x, at);
    at += box.height;
  });
}
