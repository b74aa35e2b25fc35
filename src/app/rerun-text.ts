import { printable, quoted } from '../problem/printable.js';
import { movedFigureWords } from './moved-figures.js';
import type { CarriedStudy } from './rerun.js';
import type { Agreement } from './rerun-agreement.js';
import { wrapped } from './wrap.js';

/** Places in results.json that are named when no key figure tells what moved. */
const mostPlaces = 5;

/**
 * What a run from a report says about itself: what it was computed from, and whether the results agree.
 * @param name of the PDF, as typed
 */
export function rerunText(
  name: string,
  { settings, files }: CarriedStudy,
  agreement: Agreement,
  width: number,
): string {
  const { version, modelVersion } = agreement;
  const changes = settings.changes.length === 0 ? '' : `, with ${quoted(settings.changes.join(', '), 200)}`;
  const source = `Computed from ${quoted(name, 200)} alone: ${files.length} input files${changes}.`;
  const program = version.earlier === version.later ? 'the same program' : `version ${version.earlier}`;
  const model = modelVersion.earlier === modelVersion.later ? '' : `, model ${modelVersion.earlier}`;
  const { head, lines } = verdictOn(agreement, width);
  const text = [source, `Made by ${program}${model} for ${settings.date.slice(0, 10)}.`, head];
  return [...text.flatMap((line) => wrapped(printable(line), width)), ...lines].join('\n');
}

function verdictOn({ different, moved, figures }: Agreement, width: number) {
  if (different.length === 0) return { head: 'Results agree: every figure is the same.', lines: [] };
  if (moved.length === 0) {
    const count = counted(different.length, 'figure differs', 'figures differ');
    return { head: `Results agree: ${count} in the last digits of a computer only.`, lines: [] };
  }
  const count = counted(moved.length, 'entry of results.json differs', 'entries of results.json differ');
  if (figures === null || figures.length === 0) {
    const places = moved.slice(0, mostPlaces).join(', ') + (moved.length > mostPlaces ? ', …' : '');
    return { head: `Results do not agree: ${count}: ${places}`, lines: [] };
  }
  const { head, lines } = movedFigureWords(figures, width, '');
  return { head: `Results do not agree: ${count}; figures ${head}`, lines };
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
