import type { Named, Weighing } from '../../../report/weighing.js';
import { type Child, element, type Markup, Markup as Raw } from '../markup.js';
import type { Sheet } from '../sheet.js';
import { jsonForPage, pageDataOf } from './pack.js';

/** Where a reader sets other weights and limits; its table is filled by the page's script. */
export function weighingSection(sheet: Sheet, weighing: Weighing): { id: string; markup: Markup } {
  const id = sheet.idFor(weighing.title);
  const { words } = weighing;
  const markup = element(
    'section',
    { id, class: 'weighing', 'aria-label': weighing.title, 'data-part': 'section' },
    element('h2', {}, weighing.title),
    element('p', {}, weighing.intro),
    // Taken away by the script: it also stands where scripts are on, but this one is not let run.
    element('p', { class: 'bad', 'data-part': 'no-script' }, words['no-script']),
    element(
      'form',
      { 'data-part': 'weighing', hidden: true },
      element(
        'div',
        { class: 'choices' },
        element(
          'div',
          {},
          element('h3', {}, words.criteria),
          weighing.criteria.map((criterion) => importance(criterion, weighing)),
        ),
        element(
          'div',
          {},
          weighing.limits.length === 0 ? null : limitBoxes(weighing),
          element('p', {}, element('button', { type: 'reset' }, words.reset)),
        ),
      ),
      element('p', { 'data-part': 'status', role: 'status', class: 'answer' }),
      result(words),
      weighing.notes.map((note) => element('p', { class: 'small' }, note)),
      element(
        'p',
        { class: 'small' },
        `${words.terminal} `,
        element('code', { 'data-part': 'command' }),
        ' · ',
        element('a', { 'data-part': 'link', href: `#${id}` }, words.link),
      ),
    ),
    element(
      'script',
      { type: 'application/json', 'data-part': 'data' },
      new Raw(jsonForPage(pageDataOf(weighing))),
    ),
  );
  return { id, markup };
}

/** One criterion with its steps: a group of radio buttons, of which the study's own weight is one. */
function importance({ id, label, note }: Named, { steps, words }: Weighing): Markup {
  const choices = [{ id: 'as-set', label: words['as-set'] }, ...steps];
  return element(
    'fieldset',
    {},
    element('legend', {}, label, ' ', element('small', {}, note)),
    element(
      'div',
      { class: 'steps' },
      choices.map((step, index) =>
        element(
          'label',
          {},
          element('input', {
            ...{ type: 'radio', name: `weight-${id}`, value: step.id },
            checked: index === 0 ? true : null,
          }),
          element('span', {}, step.label),
        ),
      ),
    ),
  );
}

function limitBoxes({ limits, words }: Weighing): Markup {
  return element(
    'fieldset',
    { class: 'limits' },
    element('legend', {}, element('h3', {}, words.limits)),
    limits.map(limitBox),
  );
}

function limitBox({ id, label, note }: Named): Markup {
  return element(
    'label',
    {},
    element('input', { type: 'checkbox', name: `limit-${id}`, checked: true }),
    element('span', {}, label, ' ', element('small', {}, note)),
  );
}

function result(words: Weighing['words']): Child {
  const head = (text: string, align: string) => element('th', { scope: 'col', class: align }, text);
  return element(
    'div',
    {
      ...{ class: 'scroll', role: 'region', 'aria-label': words.rank, tabindex: 0 },
      'data-part': 'result',
    },
    element(
      'table',
      {},
      element('caption', { class: 'unseen' }, words.rank),
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          [head(words.rank, 'right'), head(words.before, 'right'), head(words.candidate, 'left')],
          [head(words.passes, 'left'), head(words.score, 'right'), head(words.leads, 'right')],
        ),
      ),
      element('tbody', { 'data-part': 'rows' }),
    ),
  );
}
