import type { FiledRecord } from '../archive/file-record.js';
import { printable } from '../problem/printable.js';
import { wrapped } from './wrap.js';

/** What `decide` says when the record is filed. */
export function decidedText({ record, folder }: FiledRecord, width: number): string {
  const { id, decision, choice, because, by, date, lookAgain, supersedes } = record;
  const paragraph = (text: string) => wrapped(printable(text), width, '  ');
  const when = [by, date, lookAgain === null ? '' : `look again on ${lookAgain}`];
  return [
    ...wrapped(printable(`Filed as ${id}`), width),
    ...paragraph(`${decision} ${choice.label}: “${because}”`),
    ...paragraph(when.filter((text) => text !== '').join(', ')),
    ...(supersedes === null ? [] : paragraph(`supersedes ${supersedes}`)),
    ...paragraph(`in ${folder}`),
  ].join('\n');
}

/** The same for programs. */
export function decidedData({ record, entry, folder }: FiledRecord): object {
  return { folder, seal: entry.seal, record };
}
