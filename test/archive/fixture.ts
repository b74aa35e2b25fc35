import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BagFile } from '../../src/archive/bag.js';
import { bytesOf, sha256Of } from '../../src/archive/digest.js';
import type { FileOperations } from '../../src/archive/file-operations.js';
import { type FiledRecord, type Filing, fileRecord } from '../../src/archive/file-record.js';
import type { UnfiledDecision } from '../../src/archive/record.js';
import { disk } from '../../src/archive/store.js';

/** The disk without waiting for it: what a test asks is not whether the machine keeps its promises. */
export const quickDisk: FileOperations = { ...disk, sync() {}, syncFolder() {} };

/** An empty folder that the system cleans up. */
export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'holdwright-archive-'));

const inputs: BagFile[] = [
  { path: 'inputs/study.csv', bytes: bytesOf('item,value\nfeature.mass,860 g\n') },
  { path: 'inputs/show.csv', bytes: bytesOf('action,seconds\r\nhold,60\r\n') },
];

/** Files of a small record; the PDF is one in name only. */
export const payload: BagFile[] = [
  ...inputs,
  { path: 'report.pdf', bytes: bytesOf(`%PDF-1.7\n${'page '.repeat(400)}\n%%EOF\n`) },
  { path: 'results.json', bytes: bytesOf('{"candidates":[]}') },
];

/** A decision; what a test does not ask for is as here. */
export function decisionOf(changes: Partial<UnfiledDecision> = {}): UnfiledDecision {
  return {
    question: 'Change the drive?',
    project: 'Lantern heron',
    decision: 'adopt',
    choice: { id: 'worm-a', label: 'Worm A' },
    because: 'it holds for free',
    by: 'two makers',
    date: '2026-03-14',
    lookAgain: null,
    supersedes: null,
    verdict: 'Change to Worm A.',
    confidence: 'Likely.',
    leader: 'worm-a',
    baseline: 'servo-now',
    version: '0.1.0',
    modelVersion: '1',
    inputHash: 'f'.repeat(64),
    inputs: inputs.map(({ path, bytes }) => ({
      name: path.replace('inputs/', ''),
      file: path,
      sha256: sha256Of(bytes),
    })),
    assumptions: null,
    ...changes,
  };
}

/** A filing into an archive. */
export function filingInto(archive: string, changes: Partial<UnfiledDecision> = {}): Filing {
  return {
    archive,
    decision: decisionOf(changes),
    payload,
    now: '2026-03-14T20:00:00Z',
    software: 'holdwright 0.1.0',
  };
}

/** Files a decision and fails the test when that does not work. */
export function filed(archive: string, changes: Partial<UnfiledDecision> = {}): FiledRecord {
  const result = fileRecord(quickDisk, filingInto(archive, changes));
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('\n'));
  return result.value;
}

/** Every file below a folder with its text, by path. */
export function textsBelow(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));
  return Object.fromEntries(
    files.sort().map((path) => [path.slice(folder.length + 1), readFileSync(path, 'latin1')]),
  );
}
