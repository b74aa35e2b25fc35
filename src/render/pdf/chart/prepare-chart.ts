import type { ChartBlock } from '../../../report/document.js';
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
  const vega = await import('vega');
  const { compile } = await import('vega-lite');
  const { expressionInterpreter } = await import('vega-interpreter');
  const { CanvasRenderer, textMetrics } = vega as unknown as VegaExtras;
  textMetrics.width = (item: TextItem, text: unknown): number => {
    const words = text === null || text === undefined ? '' : String(text).trim();
    return typesetter.width(words, chartFace(item.fontWeight, item.fontStyle), item.fontSize ?? 11);
  };
  for (const { chart, width, height } of wanted) {
    const autosize = { type: 'fit', contains: 'padding' };
    const specification = { padding: 0, ...chart.specification, width, height, autosize };
    const compiled = compile(specification as unknown as Parameters<typeof compile>[0], {
      logger: silent(vega),
    }).spec;
    // Expressions are read, never made into code.
    const view = new vega.View(vega.parse(compiled, undefined, { ast: true }), {
      renderer: 'none',
      logLevel: vega.Error,
      expr: expressionInterpreter,
      loader: nothingToLoad(vega),
    } as ConstructorParameters<typeof vega.View>[1]);
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

/** A chart has all its values with it; whatever it would fetch or open is refused. */
function nothingToLoad(vega: typeof import('vega')) {
  const refuse = (): Promise<never> => Promise.reject(new Error('a chart loads nothing'));
  return { ...vega.loader(), load: refuse, sanitize: refuse, http: refuse, file: refuse };
}

/** Vega-Lite's remarks on a specification are of no use to who reads the report. */
function silent(vega: typeof import('vega')) {
  return vega.logger(vega.None);
}
