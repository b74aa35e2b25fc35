import { join } from 'node:path';
import type { Issue } from '../problem/issue.js';
import { issueAt } from '../problem/trouble.js';
import { bytesOf, sha256Of, textOf } from './digest.js';
import { type FileOperations, quietly, writeNew } from './file-operations.js';
import { jsonText, objectFrom } from './json-text.js';
import * as say from './messages.js';

/** Version of a log of the day: new keys may come, keys keep their meaning. */
export const logFormat = 'holdwright-log/1';

/** A figure in the SI unit of the quantity beside it; null when there is none. */
export type QuantityFigure = number | null;

/** One thing measured on the day, beside what was predicted. SI. */
export interface LoggedMeasurement {
  quantity: string;
  /** As typed. */
  written: string;
  value: number;
  /** Half width of the 95 % interval. */
  halfWidth: number;
  /** What the record states: the median of its draws, or the nominal figure; null when it states no such figure. */
  predicted: QuantityFigure;
  /** What eight draws in ten lie between; null without draws, left out by older logs. */
  band?: { p10: number; p90: number } | null;
}

/** What was measured on one day, kept beside the record it belongs to. */
export interface DayLog {
  format: typeof logFormat;
  /** Id of the record. */
  record: string;
  /** Seal of the record: the log speaks of this state of it and of no other. */
  seal: string;
  /** ISO date. */
  date: string;
  by: string;
  note: string;
  /** Candidate on which it was measured. */
  candidate: string;
  version: string;
  modelVersion: string;
  measured: LoggedMeasurement[];
  /** What predictions are: medians of draws after calibration, or nominal figures; left out by older logs. */
  basis?: 'draws' | 'nominal';
  /** The input that was most likely wrong, in words; empty when none stands out. */
  finding: string;
}

/** Name of a record's log; each day adds one and changes none. */
const logName = (record: string, day: number): string => `${record}.log-${day}.json`;

/**
 * Writes a log beside its record, complete or not at all.
 * @returns the name of its file
 * @throws the system's error when it cannot be written; nothing new stands in the archive then
 */
export function writeLog(files: FileOperations, archive: string, log: DayLog): string {
  let day = 1;
  while (files.kindOf(join(archive, logName(log.record, day))) !== null) day++;
  const name = logName(log.record, day);
  const staged = join(archive, `.${name}-${files.writer.process}`);
  try {
    writeNew(files, staged, bytesOf(logText(log)));
    files.rename(staged, join(archive, name));
    files.syncFolder(archive);
  } catch (error) {
    quietly(() => files.remove(staged));
    throw error;
  }
  return name;
}

/** Text of a log; its last line vouches for the others. */
function logText(log: DayLog): string {
  return jsonText({ ...log, sha256: sha256Of(bytesOf(jsonText(log))) });
}

/** The logs of a record in the order in which they were added, and those that cannot be read. */
export function logsOf(
  files: FileOperations,
  archive: string,
  id: string,
  seal: string | null,
): { logs: DayLog[]; issues: Issue[] } {
  const prefix = `${id}.log-`;
  const names = files
    .list(archive)
    .map(({ name }) => name)
    .filter((name) => name.startsWith(prefix) && /^\d+\.json$/.test(name.slice(prefix.length)))
    .sort(
      (a, b) => Number.parseInt(a.slice(prefix.length), 10) - Number.parseInt(b.slice(prefix.length), 10),
    );
  const logs: DayLog[] = [];
  const issues: Issue[] = [];
  for (const name of names) {
    const log = readLog(files, join(archive, name));
    if (log !== null && log.record === id && (seal === null || log.seal === seal)) logs.push(log);
    else issues.push(issueAt({ file: name, line: null, column: null }, say.unreadableLog()));
  }
  return { logs, issues };
}

function readLog(files: FileOperations, path: string): DayLog | null {
  try {
    const { sha256, ...read } = objectFrom(textOf(files.read(path))) ?? {};
    if (read.format !== logFormat || sha256 !== sha256Of(bytesOf(jsonText(read)))) return null;
    const sound =
      texts.every((key) => typeof read[key] === 'string') &&
      Array.isArray(read.measured) &&
      read.measured.every(isMeasurement);
    return sound ? (read as unknown as DayLog) : null;
  } catch {
    return null;
  }
}

const texts = [
  'record',
  'seal',
  'date',
  'by',
  'note',
  'candidate',
  'version',
  'modelVersion',
  'finding',
] as const;

function isMeasurement(value: unknown): boolean {
  const {
    quantity,
    written,
    value: measured,
    halfWidth,
    predicted,
    band,
  } = (value ?? {}) as Record<string, unknown>;
  return (
    [quantity, written].every((text) => typeof text === 'string') &&
    [measured, halfWidth].every((figure) => typeof figure === 'number') &&
    (predicted === null || typeof predicted === 'number') &&
    (band === null || band === undefined || isBand(band))
  );
}

function isBand(value: unknown): boolean {
  const { p10, p90 } = (typeof value === 'object' ? value : {}) as Record<string, unknown>;
  return typeof p10 === 'number' && typeof p90 === 'number';
}
