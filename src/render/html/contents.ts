import type { ReportDocument, Section } from '../../report/document.js';
import { element, type Markup } from './markup.js';

/** A line of the contents. */
export interface Entry {
  id: string;
  title: string;
  part: Section['part'];
}

/** Links to all sections: those that stand alone, then the appendix. */
export function contents(report: ReportDocument, entries: readonly Entry[]): Markup {
  const list = (part: Section['part']) =>
    element(
      'ol',
      {},
      entries
        .filter((entry) => entry.part === part)
        .map(({ id, title }) => element('li', {}, element('a', { href: `#${id}` }, title))),
    );
  const hasAppendix = entries.some(({ part }) => part === 'appendix');
  return element(
    'nav',
    { 'aria-label': 'Contents' },
    element(
      'details',
      {},
      element('summary', {}, 'Contents'),
      list('answer'),
      hasAppendix ? [element('p', {}, report.appendixTitle), list('appendix')] : null,
    ),
  );
}
