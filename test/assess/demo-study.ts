import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import type { Study } from '../../src/study/study.js';
import { demoFiles } from '../app/demo.js';

/** A demo study as read, with some of its items replaced. */
export function demoStudy(name = 'lantern-parade', changes: string[] = []): Study {
  const read = readStudy(demoFiles(name), readAssumptions(), changes);
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join('\n'));
  return read.value;
}
