import { bench, describe } from 'vitest';
import { studyFiles, templateTexts } from '../../src/cli/files.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { EnsembleRun } from '../../src/simulate/ensemble/run-ensemble.js';

const demo = new URL('../../data-demo/lantern-parade/', import.meta.url).pathname;
const demoFiles = studyFiles(demo);
const read = readStudy(demoFiles.ok ? demoFiles.value : [], readAssumptions(templateTexts()));
if (!read.ok) throw new Error('the demo does not read');
const study = read.value;
const draws = 256;

describe(`demo one, ${study.candidates.length} candidates`, () => {
  bench('nominal: all candidates', () => {
    for (const candidate of study.candidates) simulateCandidate(study, candidate);
  });

  for (const candidate of study.candidates) {
    const run = new EnsembleRun(study, [candidate], draws);
    const outcomes = run.emptyOutcomes();
    bench(`${draws} draws of ${candidate.id}`, () => run.run(0, draws, outcomes));
  }
});
