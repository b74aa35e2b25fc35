import type { RankedAgain } from '../assess/choosing/rank-again.js';
import type { PageData } from './data.js';

/** A share as whole per cent, never `100 %` or `0 %` unless it is. */
export function percent(share: number | null): string {
  if (share === null) return '–';
  if (share > 0 && share < 0.005) return '<1\u00a0%';
  if (share < 1 && share > 0.995) return '>99\u00a0%';
  return `${(share * 100).toFixed(0)}\u00a0%`;
}

/** A short text with its values put in: `{score}`. */
export function filled(text: string | undefined, values: Record<string, string>): string {
  return (text ?? '').replace(/\{(\w+)\}/g, (whole, name: string) => values[name] ?? whole);
}

/** What the limits column says of a candidate. */
function limitsText(own: RankedAgain, data: PageData): string {
  const { words, limits, onPaperFraction } = data;
  const { passes, passFraction, failedLimits } = own;
  if (passes === null) return words['not-judged']!;
  if (!passes) {
    const names = limits.filter(({ id }) => failedLimits.includes(id)).map(({ label }) => label);
    const { alwaysFails } = data.candidates.find(({ id }) => id === own.id)!;
    return filled(words.fails, { limits: [...alwaysFails, ...names].join(', ') });
  }
  return passFraction !== null && passFraction < onPaperFraction
    ? filled(words['on-paper'], { share: percent(passFraction) })
    : words['passes-all']!;
}

/** Fills the table of the page with a ranking. */
export function showRows(body: HTMLElement, ranked: readonly RankedAgain[], data: PageData): void {
  body.replaceChildren(
    ...ranked.map((own, index) => {
      const candidate = data.candidates.find(({ id }) => id === own.id)!;
      const limits = limitsText(own, data);
      const row = document.createElement('tr');
      row.dataset.candidate = own.id;
      row.dataset.leads = String(own.leadFraction);
      row.append(
        cell('td', String(index + 1), 'right'),
        cell('td', String(candidate.rank), 'right muted'),
        cell('th', candidate.label, 'name'),
        cell('td', limits, toneOf(own, data)),
        scoreCell(own.score),
        cell('td', percent(own.leadFraction), 'right'),
      );
      return row;
    }),
  );
}

function toneOf({ passes, passFraction }: RankedAgain, { onPaperFraction }: PageData): string {
  if (passes === false) return 'bad';
  return passes && !(passFraction !== null && passFraction < onPaperFraction) ? 'good' : '';
}

function cell(name: 'td' | 'th', text: string, classes: string): HTMLTableCellElement {
  const made = document.createElement(name);
  made.textContent = text;
  made.className = classes;
  if (name === 'th') made.scope = 'row';
  return made;
}

/** The score with a bar behind it. */
function scoreCell(score: number): HTMLTableCellElement {
  const made = cell('td', score.toFixed(2), 'right score');
  const bar = document.createElement('span');
  bar.className = 'bar';
  bar.style.width = `${(score * 100).toFixed(1)}%`;
  made.append(bar);
  return made;
}
