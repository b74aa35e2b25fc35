import { type Choice, type RankedAgain, rankAgain } from '../assess/choosing/rank-again.js';
import { choiceFrom, type PageData } from './data.js';
import { filled, percent, showRows } from './ranking-rows.js';
import { addressOf, commandOf, type View, viewFrom } from './view.js';

/** Value of the radio button that keeps the study's own weight. */
const asSet = 'as-set';

const part = <T extends HTMLElement>(name: string): T => document.querySelector<T>(`[data-part="${name}"]`)!;
const form = part<HTMLFormElement>('weighing');
const data = JSON.parse(part('data').textContent ?? '') as PageData;
const choice: Choice = choiceFrom(data);
const known = {
  criteria: data.criteria.map(({ id }) => id),
  limits: choice.limits,
  steps: Object.keys(data.steps),
};

/** What the radio buttons and boxes say. */
function viewOfForm(): View {
  const said = new FormData(form);
  const steps = known.criteria.map((id) => [id, String(said.get(`weight-${id}`))] as const);
  return {
    steps: new Map(steps.filter(([, step]) => step !== asSet)),
    off: new Set(known.limits.filter((id) => !said.has(`limit-${id}`))),
  };
}

/** Sets the radio buttons and boxes. */
function setForm({ steps, off }: View): void {
  for (const input of form.querySelectorAll('input')) {
    const id = input.name.replace(/^(weight|limit)-/, '');
    input.checked = input.type === 'radio' ? input.value === (steps.get(id) ?? asSet) : !off.has(id);
  }
}

/** Ranks by what is set, and shows it. */
function show(): View {
  const view = viewOfForm();
  const weights = data.criteria.map(({ id, weightScore }) => {
    const step = view.steps.get(id);
    return step === undefined ? weightScore : data.steps[step]!;
  });
  const isCounting = weights.some((weight) => weight > 0);
  if (isCounting) {
    const isOn = known.limits.map((id) => !view.off.has(id));
    const ranked = rankAgain(choice, weights, isOn);
    showRows(part('rows'), ranked, data);
    part('status').textContent = statusOf(ranked, view);
  } else part('status').textContent = data.words['no-weight']!;
  part('result').hidden = !isCounting;
  part('command').textContent = commandOf(view);
  part<HTMLAnchorElement>('link').href = `#${addressOf(view) || part('section').id}`;
  return view;
}

/** The new order in one or two sentences, for who does not see the table. */
function statusOf(ranked: readonly RankedAgain[], view: View): string {
  const [first] = ranked;
  if (first === undefined) return '';
  const { words } = data;
  const often = ranked.reduce((most, own) =>
    (own.leadFraction ?? 0) > (most.leadFraction ?? 0) ? own : most,
  );
  const sentences = [
    sentence(first.leadFraction === null ? words['first-nominal'] : words.first, first),
    ...(often === first ? [] : [sentence(words['most-often'], often)]),
    ...(view.steps.size === 0 && view.off.size === 0 ? [words.unchanged] : []),
  ];
  return sentences.join(' ');
}

function sentence(text: string | undefined, { id, score, leadFraction }: RankedAgain): string {
  const candidate = data.candidates.find((one) => one.id === id)!.label;
  return filled(text, { candidate, score: score.toFixed(2), share: percent(leadFraction) });
}

/** The address follows what is set, without a new entry in the history for every step. */
function showAndKeep(): void {
  const address = addressOf(show());
  history.replaceState(null, '', address === '' ? location.pathname + location.search : `#${address}`);
}

/** A link with a view brings its view; any other link only leads to its place. */
function followAddress(): void {
  const view = viewFrom(location.hash, known);
  if (view === null) return;
  setForm(view);
  show();
  part('section').scrollIntoView();
}

form.addEventListener('change', showAndKeep);
// The form is back to its first state only after this event.
form.addEventListener('reset', () => setTimeout(showAndKeep));
window.addEventListener('hashchange', followAddress);
form.hidden = false;
part('no-script').hidden = true;
// What a browser kept of an earlier visit gives way to the address.
setForm({ steps: new Map(), off: new Set() });
show();
followAddress();
