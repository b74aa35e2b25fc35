import type { ReportContext } from '../context.js';
import type { Filling } from '../template/fill-template.js';

/** What the calculation leaves out; all wording, no figures. */
export function notModelledSection({ assessment }: ReportContext): Filling[] {
  return [
    {
      values: { has_draws: assessment.certainty !== null, believed: assessment.believed !== null },
      charts: {},
    },
  ];
}
