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

/** Width of a drawing for a telephone: with its rim that of its place on a screen of 380 px, so that letters keep their size. */
const narrowWidth = 345;

type Specification = Record<string, unknown>;

/** Of a whole drawing, in its own units. Without a height it has that of its rows. */
interface Size {
  width: number;
  height?: number;
}

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

/** Room for what vega does not count: tails of letters below, and words a little longer than they were measured. */
const rim = 3;

/** The whole drawing and whatever words stick out of it, as a view box. */
function frameOf(view: object, svg: string): string {
  const [, width = 0, height = 0] = / viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)?.map(Number) ?? [];
  const { _origin, scenegraph } = view as ViewInside;
  const [across, down] = _origin;
  const { x1, y1, x2, y2 } = scenegraph.call(view).root.bounds;
  const [left, top] = [Math.min(0, x1 + across), Math.min(0, y1 + down)];
  const [right, bottom] = [Math.max(width, x2 + across) + rim, Math.max(height, y2 + down) + rim];
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
  const draw = async (specification: Specification, fit: 'fit' | 'fit-x', size: Size): Promise<string> => {
    const look = { ...(specification.config as object | undefined), aria: false };
    const autosize = { type: fit, contains: 'padding' };
    const view = viewOf({ padding: 0, ...specification, ...size, config: look, autosize });
    const svg = await view.toSVG();
    return svg.replace(/ viewBox="[^"]*"/, ` viewBox="${frameOf(view, svg)}"`);
  };
  for (const [index, { chart, width, height }] of sizes.entries()) {
    drawn.set(chart, {
      wide: tidySvg(await draw(chart.specification, 'fit', { width, height }), `svg${index}_w`),
      narrow: tidySvg(await draw(chart.narrow, 'fit-x', { width: narrowWidth }), `svg${index}_n`),
    });
  }
  return drawn;
}
