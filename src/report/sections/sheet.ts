import { countText } from '../../assess/figures.js';
import type { SafetyFigures } from '../../assess/safety/safety-figures.js';
import type { ReportContext } from '../context.js';
import type { Block } from '../document.js';
import { fallValues } from '../tables/sheet-fall.js';
import { furtherValues } from '../tables/sheet-further.js';
import { headlineValues } from '../tables/sheet-headlines.js';
import type { Filling, Values } from '../template/fill-template.js';
import { plain } from '../template/inline.js';
import { aboutValues } from './about.js';

/** Longest names that a page can carry beside everything else, in signs. */
export const longestSigns = { project: 70, drive: 90, person: 60 };

/**
 * What the template of the safety sheet can name.
 * @param safety with its texts cleaned
 * @param cautionCount how many cautions are shown; the others are counted
 */
export function sheetFilling(context: ReportContext, safety: SafetyFigures, cautionCount: number): Filling {
  const { phrases } = context;
  const { project, prepared_by: by, date } = aboutValues(context) as Record<string, string>;
  const shown = safety.cautions.slice(0, cautionCount);
  const values: Values = {
    project: shortened(project!, longestSigns.project),
    prepared_line:
      by === ''
        ? phrases('sheet-date', { date: date! })
        : phrases('sheet-prepared', { by: shortened(by!, longestSigns.person), date: date! }),
    drive: shortened(safety.label, longestSigns.drive),
    built_line: phrases(safety.isBuilt ? 'sheet-built' : 'sheet-planned'),
    ...fallValues(context, safety),
    ...headlineValues(context, safety),
    ...furtherValues(context, safety),
    cautions: { blocks: shown.map((caution) => cautionBlock(context, caution)) },
    more:
      shown.length === safety.cautions.length
        ? ''
        : phrases('sheet-more', { count: String(safety.cautions.length - shown.length) }),
    codes_first:
      context.assessment.cautions.find(({ code }) => code === 'codes-first')?.text ?? phrases('codes-first'),
    figures_line: safety.isCautious
      ? phrases('sheet-figures-cautious', { draws: countText(safety.draws) })
      : phrases('sheet-figures-nominal'),
  };
  return { values, charts: {} };
}

function cautionBlock(
  { phrases }: ReportContext,
  { severity, figure, text, action }: SafetyFigures['cautions'][number],
): Block {
  const label = phrases(`severity-${severity}`);
  return { kind: 'caution', severity, label, about: '', figure, text: plain(text), action: plain(action) };
}

/** A name from a file cut to so many signs: one page has to hold it. */
export function shortened(text: string, most: number): string {
  const signs = [...text];
  return signs.length <= most
    ? text
    : `${signs
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}
