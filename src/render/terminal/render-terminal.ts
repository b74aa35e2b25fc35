import { styleText } from 'node:util';
import { cleanTree, type ReportSummary } from '../../report/index.js';
import { wrapped } from './display-width.js';
import type { Paint } from './paint.js';
import { rankingLines } from './ranking-lines.js';

/** What a terminal has room for. */
export interface TerminalOptions {
  /** Columns; no line is longer. 40 at least. */
  width: number;
  colour: boolean;
  /** Path of the report, when one was written. */
  written?: string;
}

/**
 * The answer for a terminal: question, answer, ranking, reasons, worst caution, what to measure next.
 *
 * Control characters of whatever was read from files are gone; ends with a line feed.
 */
export function renderTerminal(source: ReportSummary, options: TerminalOptions): string {
  const summary = plainSpaces(cleanTree(source));
  const width = Math.max(40, Math.floor(options.width));
  const paint = painter(options.colour);
  const paragraphs = [
    [
      ...wrapped(summary.project, width).map((line) => paint(line, 'muted')),
      ...wrapped(summary.question, width),
    ],
    summary.whatIf.flatMap((change) =>
      hanging('What if: ', change, width, 2).map((line) => paint(line, 'alert')),
    ),
    [
      ...wrapped(summary.answer, width).map((line) => paint(line, 'strong')),
      ...(summary.confidence === '' ? [] : wrapped(summary.confidence, width)),
    ],
    rankingLines(summary, width, paint),
    summary.reasons.flatMap((reason, index) => hanging(`${index + 1}. `, reason, width)),
    cautionLines(summary, width, paint),
    summary.fillInFirst.flatMap((blank) => hanging('Fill in first: ', blank, width, 2)),
    summary.nextMeasurement === '' ? [] : hanging('Measure next: ', summary.nextMeasurement, width, 2),
    [
      ...wrapped(`${summary.figures}.`, width).map((line) => paint(line, 'muted')),
      ...(options.written === undefined ? [] : [`Report: ${cleanTree(options.written)}`]),
    ],
  ];
  return `${paragraphs
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function cautionLines(summary: ReportSummary, width: number, paint: Paint): string[] {
  const { caution, furtherCautions, furtherSevereCount } = summary;
  if (caution === null) return [];
  const severe = furtherSevereCount === 0 ? '' : `, ${furtherSevereCount} of them severe`;
  const word = caution.severity === 'severe' ? 'Severe' : caution.severity === 'note' ? 'Note' : 'Caution';
  const head = `${word}, ${caution.figure}: `;
  const about = caution.about === '' ? '' : `${caution.about}: `;
  const [first = '', ...rest] = hanging(head, about + caution.text, width, 2);
  const more =
    furtherCautions === 0 ? [] : [paint(`  ${furtherCautions} more in the report${severe}.`, 'muted')];
  const painted = paint(head.trimEnd(), 'alert') + first.slice(head.trimEnd().length);
  return [painted, ...rest, ...hanging('  → ', caution.action, width), ...more];
}

/** A text with something before its first line; further lines are indented. */
function hanging(head: string, text: string, width: number, indent = head.length): string[] {
  const space = ' '.repeat(indent);
  const [first = '', ...rest] = wrapped(
    head.trimStart().replaceAll(' ', '\u00a0') + text,
    width - (head.length - head.trimStart().length),
  );
  const lead = ' '.repeat(head.length - head.trimStart().length);
  const others = wrapped(rest.join(' '), width - indent);
  return [
    lead + first.replaceAll('\u00a0', ' '),
    ...(rest.length === 0 ? [] : others.map((line) => space + line)),
  ];
}

function painter(colour: boolean): Paint {
  if (!colour) return (text) => text;
  const styles = { strong: 'bold', muted: 'dim', alert: 'bold' } as const;
  return (text, kind) => styleText(styles[kind], text, { validateStream: false });
}

/** No-break spaces are for paper; a terminal gets plain ones. */
function plainSpaces<T>(tree: T): T {
  return JSON.parse(JSON.stringify(tree).replace(/[\u00a0\u202f]/g, ' '));
}
