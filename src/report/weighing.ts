import type { Assessment } from '../assess/assessment.js';
import type { Choice } from '../assess/choosing/rank-again.js';
import { limitName } from '../assess/criterion-words.js';
import { countText } from '../assess/figures.js';
import { surePassFrom } from '../assess/thresholds.js';
import { importanceSteps } from '../study/choosing.js';
import { markedLabel, type ReportWishes, reportContext } from './context.js';
import type { Templates } from './template/template-error.js';
import { criterionFigure, limitDemand } from './words/criterion-words.js';
import { number } from './words/figures.js';
import { leftOutWords } from './words/left-out.js';

/** Something to choose, with what a reader sees of it. */
export interface Named {
  id: string;
  label: string;
  /** Said in a lower voice behind the label. */
  note: string;
}

/** The part of a page in which a reader sets other weights, drops limits, and sees the ranking follow. */
export interface Weighing {
  title: string;
  intro: string;
  /** What the steps mean, and what never can be dropped. */
  notes: string[];
  /** Named steps of importance, least first, with their units of weight. */
  steps: { id: string; label: string; weightScore: number }[];
  criteria: Named[];
  limits: Named[];
  /** In rank order, as the study ranks them, each with the limits that it fails whatever is dropped. */
  candidates: { id: string; label: string; alwaysFails: string[] }[];
  /** Passing in a smaller share of the draws is passing on paper. */
  onPaperFraction: number;
  words: Record<(typeof wordNames)[number], string>;
  choice: Choice;
}

/**
 * Short texts of the part, each `weighing-<name>` among the phrases. What is only known while the page is read stays
 * in them as `{candidate}`, `{score}`, `{share}`, `{limits}`.
 */
const wordNames = [
  'as-set',
  'criteria',
  'limits',
  'reset',
  'rank',
  'before',
  'candidate',
  'passes',
  'score',
  'leads',
  'passes-all',
  'on-paper',
  'fails',
  'not-judged',
  'first',
  'first-nominal',
  'most-often',
  'unchanged',
  'no-weight',
  'terminal',
  'link',
  'no-script',
] as const;

/** The words around a choice; see `buildReport` for the parameters. */
export function weighingOf(
  source: Assessment,
  choice: Choice,
  templates: Templates,
  date: string,
  wishes: ReportWishes = {},
): Weighing {
  const context = reportContext(source, templates, date, wishes);
  const { phrases, assessment } = context;
  const say = (name: string, values: Record<string, string> = {}) => phrases(`weighing-${name}`, values);
  const steps = Object.entries(importanceSteps).map(([id, weightScore]) => ({
    id,
    label: say(`step-${id}`),
    weightScore,
  }));
  const open = Object.fromEntries(
    ['candidate', 'score', 'share', 'limits'].map((name) => [name, `{${name}}`]),
  );
  const { criteria } = assessment.study;
  return {
    title: say('title'),
    intro: say('intro', { draws: countText(choice.drawCount) }),
    notes: [
      say('note-steps', {
        steps: steps.map(({ label, weightScore }) => `${label} ${weightScore}`).join(', '),
      }),
      say('note-limits'),
      leftOutWords(context),
    ].filter((note) => note !== ''),
    steps,
    criteria: choice.criteria.map(({ id, weightScore }) => {
      const { worthless, worthFull } = criteria.find((criterion) => criterion.id === id)!;
      const [none, full] = [worthless, worthFull].map((value) => criterionFigure(id, value, context));
      const note = say('scale', { none: none!, full: full!, weight: number(weightScore) });
      return { id, label: limitName(id), note };
    }),
    limits: choice.limits.map((id) => {
      const { direction, bound } = criteria.find((criterion) => criterion.id === id)!.must!;
      const demand = { criterion: id, direction, limit: bound, value: null, passes: null, margin: null };
      return { id, label: limitName(id), note: limitDemand(demand, context) };
    }),
    candidates: context.candidates.map((candidate) => ({
      id: candidate.id,
      label: markedLabel(candidate),
      alwaysFails: candidate.limits
        .filter(({ criterion, passes }) => passes === false && !choice.limits.includes(criterion))
        .map(({ criterion }) => limitName(criterion)),
    })),
    words: Object.fromEntries(wordNames.map((name) => [name, say(name, open)])) as Weighing['words'],
    onPaperFraction: surePassFrom,
    choice,
  };
}
