import type { Block, ChartBlock, ReportDocument } from '../../report/document.js';
import { columnWidths, type Geometry } from './style.js';

/** Every chart of a document with the size it will have on the page, in points. */
export function chartSizes(report: ReportDocument, geometry: Geometry) {
  const found: { chart: ChartBlock; width: number; height: number }[] = [];
  // A lower page gets lower charts, so that what fits one paper fits the other; lower than in proportion, since the
  // words beside them do not shrink.
  const fullness = Math.min(1, ((geometry.bottom - geometry.top) * 0.676) / geometry.textWidth);
  const unit = geometry.textWidth * fullness ** 2;
  const visit = (blocks: Block[], width: number): void => {
    for (const block of blocks) {
      if (block.kind === 'chart') {
        found.push({ chart: block, width, height: block.aspectRatio * unit });
      } else if (block.kind === 'side-by-side') {
        const shares = block.columns.map((column) => column.share);
        const widths = columnWidths(width, shares);
        block.columns.forEach((column, index) => {
          visit(column.blocks, widths[index]!);
        });
      }
    }
  };
  for (const section of report.sections) visit(section.blocks, geometry.textWidth);
  return found;
}
