import type { Block, ReportDocument, Section } from '../../src/report/index.js';

/** All words of blocks in reading order, no-break spaces as plain ones. */
export function blocksText(blocks: Block[]): string {
  return blocks.map(blockText).join('\n').replaceAll('\u00a0', ' ');
}

export function documentText(document: ReportDocument): string {
  return document.sections.map((section) => blocksText(section.blocks)).join('\n');
}

export function sectionOf(document: ReportDocument, name: string): Section {
  const section = document.sections.find((one) => one.name === name);
  if (!section) throw new Error(`no section ${name}`);
  return section;
}

/** Blocks of one kind, also those inside columns. */
export function blocksOf<K extends Block['kind']>(blocks: Block[], kind: K): Extract<Block, { kind: K }>[] {
  return blocks.flatMap((block) => [
    ...(block.kind === kind ? [block as Extract<Block, { kind: K }>] : []),
    ...(block.kind === 'side-by-side'
      ? block.columns.flatMap((column) => blocksOf(column.blocks, kind))
      : []),
  ]);
}

function words(inline: { text: string }[]): string {
  return inline.map((span) => span.text).join('');
}

function blockText(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return block.text;
    case 'paragraph':
      return words(block.text);
    case 'list':
      return block.items.map(words).join('\n');
    case 'table': {
      const head = block.columns.map((column) => `${column.heading} ${column.unit}`).join(' | ');
      const rows = block.rows.map((row) => row.cells.map((cell) => words(cell.text)).join(' | '));
      return [block.title, head, ...rows, words(block.note)].join('\n');
    }
    case 'chart':
      return [block.title, block.alternative, words(block.caption)].join('\n');
    case 'caution':
      return [block.label, block.about, block.figure, words(block.text), words(block.action)].join(' ');
    case 'facts':
      return block.items.map(({ label, value, note }) => `${label}: ${value} ${note ?? ''}`).join('\n');
    case 'image':
      return block.alternative;
    case 'side-by-side':
      return block.columns.map((column) => blocksText(column.blocks)).join('\n');
    case 'calculation':
      return [block.quantity, block.equation, block.numbers, block.result, block.source].join(' ');
    case 'page-break':
      return '';
  }
}
