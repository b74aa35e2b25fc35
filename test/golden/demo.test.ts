import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { modelVersion } from '../../src/assess/assessment.js';
import { studyFiles } from '../../src/cli/files.js';
import { readAssumptions } from '../../src/input/read-assumptions.js';
import { readStudy } from '../../src/input/read-study.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';

/*
 * Frozen nominal figures of the two demo studies. They prove that nothing moved, not that anything is true: truth is
 * the business of the tests against sources. When a figure moves on purpose, the model version moves with it and the
 * README gains a line under "What changed"; then update with `npx vitest run --dir test/golden -u`.
 */
const folder = (demo: string) => new URL(`../../data-demo/${demo}/`, import.meta.url).pathname;

/** Six significant digits: enough to see any change of the model, too few for a last bit. */
const six = (value: unknown): unknown => (typeof value === 'number' ? Number(value.toPrecision(6)) : value);

function figuresOf(demo: string): unknown {
  const assumptions = readFileSync(new URL('../../templates/assumptions.csv', import.meta.url), 'utf8');
  const files = studyFiles(folder(demo));
  const read = readStudy(files.ok ? files.value : [], readAssumptions({ 'assumptions.csv': assumptions }));
  if (!read.ok) throw new Error('the demo does not read');
  return read.value.candidates.map((candidate) => {
    const run = simulateCandidate(read.value, candidate);
    const flat = {
      ...run.motor,
      ...run.nominal,
      ...run.nominal.powerCut,
      energy: null,
      powerCut: null,
      shorted: null,
    };
    const figures = Object.fromEntries(
      Object.entries(flat).map(([name, value]) => [name, Array.isArray(value) ? value.map(six) : six(value)]),
    );
    return {
      id: run.id,
      figures,
      failures: run.failures.map(({ code }) => code),
      findings: run.findings.map(({ code }) => code),
    };
  });
}

describe(`frozen demo figures, model ${modelVersion}`, () => {
  it.each(['lantern-parade', 'stage-prop'])('of %s are as they were', async (demo) => {
    await expect(JSON.stringify(figuresOf(demo), null, 1)).toMatchFileSnapshot(`${demo}.json`);
  });
});
