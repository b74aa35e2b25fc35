import type { CalculationLine } from '../assess/assessment.js';
import { wrapped } from './wrap.js';

/**
 * The working as text: under each heading the quantity with its result, then the equation, the numbers put in, and
 * the source.
 * @param width columns to write in
 */
export function workingText(label: string, lines: CalculationLine[], width: number): string {
  const text = wrapped(`The working of ${label}`, width);
  let heading = '';
  for (const line of lines) {
    if (line.section !== heading) text.push('', ...wrapped(line.section, width));
    heading = line.section;
    text.push(
      ...wrapped(`${line.quantity}: ${line.result}`, width, '  ', '      '),
      ...wrapped(line.equation, width, '      '),
      ...wrapped(`= ${line.numbers}`, width, '      '),
      ...wrapped(`[${line.source}]`, width, '      '),
    );
  }
  return text.join('\n');
}
