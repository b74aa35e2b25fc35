import type { ChartBlock, ReportDocument } from '../../../report/document.js';
import { chartMaker } from '../../closed-view.js';
import { chartSizes } from '../../pdf/chart-sizes.js';
import { geometryOf } from '../../pdf/style.js';
import { textWidth } from './text-width.js';
import { tidySvg } from './tidy-svg.js';

/** One chart, drawn for a wide place and again for a narrow one, so that its letters can be read in both. */
export interface DrawnChart {
  wide: string;
  narrow: string;
}

/** Width of a drawing for a telephone, in the units in which charts are worded: their letters are 8 high. */
const narrowWidth = 285;

/** Parts of vega that its types leave out. */
interface VegaExtras {
  textMetrics: {
    width(item: { fontSize?: number; fontWeight?: number | string }, text: unknown): number;
  };
}

/** What a view knows of its drawing; not in vega's types. */
interface ViewInside {
  _origin: [number, number];
  scenegraph(): { root: { bounds: Record<'x1' | 'y1' | 'x2' | 'y2', number> } };
}

/** The whole drawing and whatever words stick out of it, as a view box. */
function frameOf(view: object, width: number, height: number): string {
  const { _origin, scenegraph } = view as ViewInside;
  const [across, down] = _origin;
  const { x1, y1, x2, y2 } = scenegraph.call(view).root.bounds;
  const [left, top] = [Math.min(0, x1 + across), Math.min(0, y1 + down)];
  const [right, bottom] = [Math.max(width, x2 + across), Math.max(height, y2 + down)];
  return [left, top, right - left, bottom - top].map((length) => length.toFixed(1)).join(' ');
}

/** Draws every chart of a document as SVG. Vega is loaded only when there is one. */
export async function drawCharts(report: ReportDocument): Promise<Map<ChartBlock, DrawnChart>> {
  const drawn = new Map<ChartBlock, DrawnChart>();
  const sizes = chartSizes(report, geometryOf('A4'));
  if (sizes.length === 0) return drawn;
  const { vega, viewOf } = await chartMaker();
  // Set for all of vega: whoever draws next sets its own.
  (vega as unknown as VegaExtras).textMetrics.width = ({ fontSize = 11, fontWeight }, text) =>
    textWidth(String(text ?? '').trim(), fontSize, fontWeight === 'bold' || Number(fontWeight) >= 600);
  const draw = async ({ specification }: ChartBlock, width: number, height: number): Promise<string> => {
    const look = { ...(specification.config as object | undefined), aria: false };
    const autosize = { type: 'fit', contains: 'padding' };
    const view = viewOf({ padding: 0, ...specification, config: look, width, height, autosize });
    const svg = await view.toSVG();
    return svg.replace(/ viewBox="[^"]*"/, ` viewBox="${frameOf(view, width, height)}"`);
  };
  for (const [index, { chart, width, height }] of sizes.entries()) {
    drawn.set(chart, {
      wide: tidySvg(await draw(chart, width, height), `svg${index}_w`),
      narrow: tidySvg(await draw(chart, narrowWidth, height), `svg${index}_n`),
    });
  }
  return drawn;
}
