import { printable, quoted } from '../problem/printable.js';
import { movedFigureWords } from './moved-figures.js';
import type { RecordedCandidate } from './records-figures.js';
import type { Moved, Reopened } from './reopen.js';
import { wrapped } from './wrap.js';

/** Column in which the answers stand. */
const indent = ' '.repeat(13);

/**
 * What `reopen` says.
 * @param today ISO date
 */
export function reopenedText(reopened: Reopened, width: number, today: string): string {
  const { decision, version, modelVersion, ranking, verdict } = reopened;
  const { id, choice, because, by, date } = decision;
  const point = (name: string, text: string) =>
    wrapped(printable(text), width, name.padEnd(indent.length), indent).map((line) => line.trimEnd());
  const order = (ids: string[] | null) => ids?.join(', ') ?? 'not readable';
  const isSameOrder = order(ranking.earlier) === order(ranking.later);
  const isSameVerdict = verdict.earlier === verdict.later;
  return [
    ...wrapped(printable(id), width),
    ...wrapped(printable(`${decision.decision} ${choice.label}: “${quoted(because, 300)}”`), width, '  '),
    ...wrapped(printable([by, date].filter((text) => text !== '').join(', ')), width, '  '),
    '',
    ...point('Inputs', inputWords(reopened)),
    ...reopened.values.flatMap(({ name, earlier, later }) =>
      wrapped(printable(`${name}: ${earlier} → ${later}`), width, `${indent}  `, `${indent}    `),
    ),
    ...point('Assumptions', assumptionWords(reopened)),
    ...point('Program', movedWords(version)),
    ...point('Model', movedWords(modelVersion)),
    ...figureLines(reopened, width, point),
    ...point('Ranking', isSameOrder ? `the same: ${order(ranking.later)}` : `was ${order(ranking.earlier)}`),
    ...(isSameOrder ? [] : point('', `is ${order(ranking.later)}`)),
    ...point('Verdict', isSameVerdict ? `the same: ${verdict.later}` : `was: ${verdict.earlier}`),
    ...(isSameVerdict ? [] : point('', `is: ${verdict.later}`)),
    ...point('The choice', choiceWords(reopened)),
    ...(decision.lookAgain === null ? [] : point('Look again', lookAgainWords(decision.lookAgain, today))),
  ].join('\n');
}

function inputWords({ files, ofToday }: Reopened): string {
  const named = (state: string) =>
    files.filter((file) => file.state === state).map(({ name }) => quoted(name));
  const same = named('same').length;
  const parts = (['changed', 'new', 'gone'] as const)
    .filter((state) => named(state).length > 0)
    .map((state) => `${state}: ${named(state).join(', ')}`);
  const source = ofToday ? 'the study as it stands now' : 'those of the record';
  return `${source}; ${[`${same} of ${files.length} files the same`, ...parts].join('; ')}`;
}

function assumptionWords({ assumptionsDiffer, ofToday }: Reopened): string {
  if (!assumptionsDiffer) return 'the same table';
  return ofToday
    ? 'the table of this program, which differs from that of the record'
    : 'the table of the record; that of this program differs by now';
}

function movedWords({ earlier, later }: Moved<string>): string {
  return earlier === later ? `${later}, then and now` : `${earlier} then, ${later} now`;
}

/** One paragraph for each candidate whose figures moved. */
function figureLines(
  { figures }: Reopened,
  width: number,
  point: (name: string, text: string) => string[],
): string[] {
  if (figures === null) return point('Results', 'those of the record cannot be read');
  const { head, lines } = movedFigureWords(figures, width, indent);
  return [...point('Results', head), ...lines];
}

function choiceWords({ choice, decision }: Reopened): string {
  const { earlier, later } = choice;
  if (later === null) return `${decision.choice.label} is no candidate any more`;
  if (earlier === null) return `${decision.choice.label} is ${standing(later)}`;
  const [before, after] = [standing(earlier), standing(later)];
  return before === after ? `was and is ${after}` : `was ${before}; is ${after}`;
}

function standing({ rank, passes }: RecordedCandidate): string {
  const limits =
    passes === null ? 'not known to pass every limit' : passes ? 'passes every limit' : 'fails a limit';
  return `number ${rank} and ${limits}`;
}

function lookAgainWords(lookAgain: string, today: string): string {
  return lookAgain <= today ? `was due on ${quoted(lookAgain)}` : `on ${quoted(lookAgain)}`;
}

/** The same for programs. */
export function reopenedData({ values, ...reopened }: Reopened): object {
  return {
    ...reopened,
    values: values.map(({ name, kind, earlier, later }) => ({ name, kind, earlier, later })),
  };
}
