import type { ChartBlock } from '../../../report/document.js';
import { chartMaker } from '../../closed-view.js';
import type { Typesetter } from '../typesetter.js';
import type { ChartContext } from './chart-context.js';
import { chartFace } from './chart-face.js';
import type { TextItem, VegaExtras, ViewExtras } from './vega-types.js';

/** A chart laid out at its size on the page, ready to be drawn. */
export interface PreparedChart {
  width: number;
  height: number;
  /** Draws at once, with the context's origin at the chart's upper left corner. */
  draw(context: ChartContext): void;
}

/**
 * Lays charts out at the size they will have on the page, so that a point is a point everywhere.
 *
 * Vega is loaded only when there is a chart; its text is measured with the fonts of the report.
 *
 * @param wanted charts with the width and height of the whole figure in points
 */
export async function prepareCharts(
  typesetter: Typesetter,
  wanted: { chart: ChartBlock; width: number; height: number }[],
): Promise<Map<ChartBlock, PreparedChart>> {
  const prepared = new Map<ChartBlock, PreparedChart>();
  if (wanted.length === 0) return prepared;
  const { vega, viewOf } = await chartMaker();
  const { CanvasRenderer, textMetrics } = vega as unknown as VegaExtras;
  textMetrics.width = (item: TextItem, text: unknown): number => {
    const words = text === null || text === undefined ? '' : String(text).trim();
    return typesetter.width(words, chartFace(item.fontWeight, item.fontStyle), item.fontSize ?? 11);
  };
  for (const { chart, width, height } of wanted) {
    const autosize = { type: 'fit', contains: 'padding' };
    const view = viewOf({ padding: 0, ...chart.specification, width, height, autosize });
    await view.runAsync();
    const { _origin: inner, scenegraph } = view as unknown as ViewExtras;
    const { left, top } = view.padding() as { left: number; top: number };
    const origin: [number, number] = [left + inner[0], top + inner[1]];
    const draw = (context: ChartContext): void => {
      new CanvasRenderer(null)
        .initialize(null, width, height, origin, 1, { externalContext: context })
        .render(scenegraph.call(view).root);
    };
    prepared.set(chart, { width, height, draw });
  }
  return prepared;
}
