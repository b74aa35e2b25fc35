import type { ChartContent } from '../template/fill-template.js';

/** Charts that have something to show, by name. */
export function present(charts: Record<string, ChartContent | null>): Record<string, ChartContent> {
  return Object.fromEntries(
    Object.entries(charts).flatMap(([name, chart]) => (chart ? [[name, chart]] : [])),
  );
}
