import type { StoredArchive, StoredRecord } from '../archive/read-archive.js';
import { quoted } from '../problem/printable.js';
import { fitted } from '../render/terminal/display-width.js';
import { stateOf } from './records.js';
import { logLines } from './records-log-text.js';
import { wrapped } from './wrap.js';

/** Columns of the states and dates; names take what is left. */
const stateWidth = 10;
const dateWidth = 10;

/**
 * The records of an archive as a table; below each its reason and what was measured on the day.
 * @param today ISO date, to tell which are due
 */
export function recordsText(archive: StoredArchive, width: number, today: string): string {
  const { records } = archive;
  if (records.length === 0) return 'There are no records yet.';
  const free = width - stateWidth - dateWidth - 3;
  const idWidth = Math.min(Math.max(...records.map(({ id }) => id.length), 'record'.length), free - 16);
  const row = (id: string, choice: string, again: string, state: string) =>
    [fitted(id, idWidth), fitted(choice, free - idWidth), fitted(again, dateWidth), fitted(state, stateWidth)]
      .join(' ')
      .trimEnd();
  const blocks = records.map((record) => [
    row(record.id, choiceOf(record), lookAgainOf(record, today), stateOf(record, records)),
    ...reasonLines(record, width),
    ...record.logs.flatMap((log) => logLines(log, width - 2).map((line) => `  ${line}`)),
  ]);
  return [row('record', 'about', 'look again', 'state'), ...blocks.flat(), '', totals(archive, today)].join(
    '\n',
  );
}

function choiceOf({ record }: StoredRecord): string {
  return record === null ? '–' : quoted(record.choice.label, 200);
}

/** The date to look again; marked once it has come. */
function lookAgainOf({ record }: StoredRecord, today: string): string {
  const again = record?.lookAgain ?? null;
  if (again === null) return '–';
  return again <= today ? 'due' : quoted(again);
}

function reasonLines({ record }: StoredRecord, width: number): string[] {
  if (record === null) return [];
  const by = record.by === '' ? '' : ` (${quoted(record.by)})`;
  const after = record.supersedes === null ? '' : `; supersedes ${quoted(record.supersedes)}`;
  return wrapped(`“${quoted(record.because, 300)}”${by}${after}`, width, '  ');
}

function totals({ records, issues }: StoredArchive, today: string): string {
  const damaged = records.filter((record) => record.issues.length > 0).length;
  const due = records.filter(({ record }) => record?.lookAgain && record.lookAgain <= today).length;
  const parts = [
    `${records.length} record${records.length === 1 ? '' : 's'}`,
    damaged > 0 ? `${damaged} damaged` : issues.length > 0 ? 'see above' : 'all sound',
    ...(due > 0 ? [`${due} to look at again`] : []),
  ];
  return `${parts.join(', ')}.`;
}

/** The same for programs. */
export function recordsData({ records, ledger }: StoredArchive): object {
  return {
    records: records.map((stored) => ({
      id: stored.id,
      state: stateOf(stored, records),
      seal: ledger?.find(({ id }) => id === stored.id)?.seal ?? stored.entry?.seal ?? null,
      record: stored.record,
      logs: stored.logs,
    })),
  };
}
