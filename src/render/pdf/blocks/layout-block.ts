import type { Block, Column } from '../../../report/document.js';
import { type Box, drawStack, type Press, stackHeight } from '../box.js';
import { columnWidths, gutter, type } from '../style.js';
import type { Tag, TagKind } from '../tags.js';
import { calculationBox } from './calculation.js';
import { cautionBox } from './caution.js';
import { chartBox } from './chart.js';
import { factsBoxes } from './facts.js';
import { imageBox } from './image.js';
import { blankBoxes, headlineBoxes } from './large-facts.js';
import { tableBoxes } from './table.js';
import { answerBox, headingBox, listBoxes, paragraphBoxes } from './text.js';

/** Where blocks stand: how wide, under which element, and below which heading. */
export interface Setting {
  width: number;
  parent: Tag;
  /** Level of the last heading; the next may go one deeper. */
  headingLevel: { current: number };
}

/** Lays a block out as boxes; nothing is drawn yet. */
export function layoutBlock(press: Press, block: Block, setting: Setting): Box[] {
  const { width, parent } = setting;
  switch (block.kind) {
    case 'heading':
      return [headingBox(press, block, width, parent, headingKind(block.level, setting))];
    case 'paragraph':
      if (block.style === 'answer') return [answerBox(press, block.text, width, parent)];
      return paragraphBoxes(press, block.text, type[block.style], width, parent);
    case 'list':
      return listBoxes(press, block, width, parent);
    case 'table':
      return tableBoxes(press, block, width, parent);
    case 'facts':
      if (block.style === 'headline') return headlineBoxes(press, block, width, parent);
      if (block.style === 'blank') return blankBoxes(press, block, width, parent);
      return factsBoxes(press, block, width, parent);
    case 'caution':
      return [cautionBox(press, block, width, parent)];
    case 'calculation':
      return [calculationBox(press, block, width, parent)];
    case 'chart':
      return [chartBox(press, block, width, parent)];
    case 'image':
      return [imageBox(press, block, width, parent)];
    case 'side-by-side':
      return columnsBoxes(press, block.columns, setting);
    case 'page-break':
      return [];
  }
}

/** A tagged document skips no heading level, whatever the wording does. */
function headingKind(level: number, { headingLevel }: Setting): TagKind {
  headingLevel.current = Math.min(level, headingLevel.current + 1);
  return `H${headingLevel.current}` as TagKind;
}

/** Columns beside each other as one box; too tall for a page, they go under each other at full width. */
function columnsBoxes(press: Press, columns: Column[], setting: Setting): Box[] {
  const widths = columnWidths(
    setting.width,
    columns.map((column) => column.share),
  );
  const lay = (column: Column, width: number): Box[] =>
    column.blocks.flatMap((block) => layoutBlock(press, block, { ...setting, width }));
  const stacks = columns.map((column, index) => lay(column, widths[index]!));
  const height = Math.max(...stacks.map(stackHeight));
  if (height > press.geometry.bottom - press.geometry.top) {
    return columns.flatMap((column) => lay(column, setting.width));
  }
  const draw = (x: number, y: number): void => {
    let left = x;
    stacks.forEach((stack, index) => {
      drawStack(stack, left, y);
      left += widths[index]! + gutter;
    });
  };
  const before = Math.max(...stacks.map((stack) => stack[0]?.before ?? 0));
  const after = Math.max(...stacks.map((stack) => stack.at(-1)?.after ?? 0));
  return [{ height, before, after, keepWithNext: false, draw }];
}
