import { createHash } from 'node:crypto';
import type { Assessment } from '../assess/assessment.js';

type Inputs = Assessment['inputs'];

/** Every file with its hash and, for the record, its text; in the order of their names. */
export function inputsAsRead(files: { name: string; bytes: Uint8Array }[]): Inputs {
  const decoder = new TextDecoder();
  const inputs = files.map(({ name, bytes }) => ({
    name,
    sha256: sha256(bytes),
    text: decoder.decode(bytes),
  }));
  return inputs.sort((a, b) => (a.name < b.name ? -1 : 1));
}

/**
 * One hash over everything that decides the numbers: names and hashes of the files, the table of assumptions, and
 * the changes that were tried.
 */
export function inputHash(inputs: Inputs, assumptions: string, changes: string[]): string {
  const files = inputs.map(({ name, sha256: hash }) => `${hash}  ${name}`);
  return sha256([...files, `${sha256(assumptions)}  assumptions`, ...changes].join('\n'));
}

function sha256(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}
