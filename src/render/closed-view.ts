/** What it takes to draw charts; loaded only when there is one. */
export interface ChartMaker {
  vega: typeof import('vega');
  /** A view of a Vega-Lite specification, not yet run. */
  viewOf(specification: Record<string, unknown>): import('vega').View;
}

/**
 * Loads vega for charts that are closed to the world: whatever a specification asks for, no chart reads a file, opens
 * an address or leads to one, and its expressions are read, never made into code.
 */
export async function chartMaker(): Promise<ChartMaker> {
  const vega = await import('vega');
  const { compile } = await import('vega-lite');
  const { expressionInterpreter } = await import('vega-interpreter');
  const refuse = (): Promise<never> => Promise.reject(new Error('a chart loads nothing'));
  const loader = {
    ...vega.loader(),
    load: refuse,
    http: refuse,
    file: refuse,
    sanitize: () => Promise.resolve({ href: '' }),
  };
  // Vega-Lite's remarks on a specification are of no use to who reads the report.
  const logger = vega.logger(vega.None);
  const viewOf = (specification: Record<string, unknown>) => {
    const compiled = compile(specification as unknown as Parameters<typeof compile>[0], { logger }).spec;
    return new vega.View(vega.parse(compiled, undefined, { ast: true }), {
      renderer: 'none',
      logLevel: vega.Error,
      expr: expressionInterpreter,
      loader,
    } as ConstructorParameters<typeof vega.View>[1]);
  };
  return { vega, viewOf };
}
