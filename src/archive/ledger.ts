import { jsonText, objectFrom } from './json-text.js';
import { type Decision, type DecisionRecord, isDecision } from './record.js';

const ledgerFormat = 'holdwright-ledger/1';

/** File in an archive that lists its records. */
export const ledgerName = 'ledger.json';

/** What the ledger says of a record; everything but the seal stands in the record itself. */
export interface LedgerEntry {
  id: string;
  date: string;
  decision: Decision;
  choice: { id: string; label: string };
  question: string;
  because: string;
  by: string;
  lookAgain: string | null;
  supersedes: string | null;
  version: string;
  modelVersion: string;
  inputHash: string;
  /** Hash of the record's tag manifest, and so of everything in it. */
  seal: string;
}

/** The line of a record. */
export function ledgerEntry(record: DecisionRecord, seal: string): LedgerEntry {
  const { id, date, decision, choice, question, because, by, lookAgain, supersedes } = record;
  const { version, modelVersion, inputHash } = record;
  const words = { question, because, by, lookAgain, supersedes };
  const { id: candidate, label } = choice;
  return {
    ...{ id, date, decision, choice: { id: candidate, label } },
    ...words,
    ...{ version, modelVersion, inputHash, seal },
  };
}

/** Text of the ledger: by date, then by id. The same records give the same bytes, in whatever order they come. */
export function ledgerText(entries: readonly LedgerEntry[]): string {
  return jsonText({ format: ledgerFormat, records: inOrder(entries) });
}

/** Entries by date, then by id. */
export function inOrder<T extends Pick<LedgerEntry, 'id' | 'date'>>(entries: readonly T[]): T[] {
  return [...entries].sort((a, b) => compareText(a.date, b.date) || compareText(a.id, b.id));
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Reads a ledger; null when anything in it is not as it should be. */
export function readLedger(text: string): LedgerEntry[] | null {
  const read = objectFrom(text);
  if (read === null || read.format !== ledgerFormat || !Array.isArray(read.records)) return null;
  const entries = read.records as LedgerEntry[];
  if (!entries.every(isEntry)) return null;
  const ids = new Set(entries.map(({ id }) => id));
  return ids.size === entries.length ? entries : null;
}

const texts = [
  'id',
  'date',
  'question',
  'because',
  'by',
  'version',
  'modelVersion',
  'inputHash',
  'seal',
] as const;

function isEntry(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const entry = value as Record<string, unknown>;
  const { id, label } = (entry.choice ?? {}) as Record<string, unknown>;
  return (
    texts.every((key) => typeof entry[key] === 'string') &&
    [entry.lookAgain, entry.supersedes].every((text) => text === null || typeof text === 'string') &&
    [id, label].every((text) => typeof text === 'string') &&
    isDecision(entry.decision)
  );
}

/** Whether two entries say the same; the order of their keys does not count. */
export function sameEntry(a: LedgerEntry, b: LedgerEntry): boolean {
  const keys = [...texts, 'decision', 'lookAgain', 'supersedes'] as const;
  return (
    keys.every((key) => a[key] === b[key]) && a.choice.id === b.choice.id && a.choice.label === b.choice.label
  );
}
