import { describe, expect, it } from 'vitest';
import { beginDraws } from '../../../src/assess/certainty/draws.js';
import { listingOf, nominalRun } from '../../../src/simulate/candidate.js';
import { outcomeIndex } from '../../../src/simulate/ensemble/ensemble.js';
import type { Study } from '../../../src/study/study.js';
import { demoStudy } from '../demo-study.js';

const listed: Study = { ...demoStudy(), measured: [], drawsCount: 512 };
const minutes = 60;
const readings: Study['measured'] = [
  { quantity: 'runtime', value: 70 * minutes, halfWidth: 3 * minutes, note: '' },
  { quantity: 'hold_current', value: 0.3, halfWidth: 0.015, note: '' },
];
const measured: Study = { ...listed, measured: readings };

describe('single figures after a measurement', () => {
  const { believed, finish } = beginDraws(measured);
  const { ensemble } = finish();
  const place = listed.candidates.findIndex(({ id }) => id === listed.baselineId);
  const medianRuntimeS = (index: number): number => {
    const sorted = ensemble.outcomes[index]![outcomeIndex.runtimeS]!.slice().sort();
    return sorted[sorted.length / 2]!;
  };

  it('are those of the study as read as long as nothing is measured, or nothing agrees', () => {
    expect(beginDraws(listed).believed).toBe(listed);
    const impossible: Study['measured'] = [
      { quantity: 'runtime', value: 9000 * minutes, halfWidth: minutes, note: '' },
    ];
    const contradicted = { ...listed, measured: impossible };
    expect(beginDraws(contradicted).believed).toBe(contradicted);
  });

  it('lie in the middle of the draws for the drive that was measured and for the others', () => {
    listed.candidates.forEach((candidate, index) => {
      const { runtimeS } = nominalRun(measured, believed, candidate).nominal;
      // The middle of the inputs is not quite the middle of what comes out, the less the wider the spreads are.
      const allowed = index === place ? 0.04 : 0.1;
      expect(Math.abs(runtimeS! / medianRuntimeS(index) - 1), candidate.id).toBeLessThan(allowed);
    });
    const asListed = nominalRun(listed, listed, listed.candidates[place]!).nominal.runtimeS!;
    expect(Math.abs(asListed / medianRuntimeS(place) - 1)).toBeGreaterThan(0.05);
  });

  it('leave what the listing says and what was assumed as it was read, and the study itself', () => {
    for (const candidate of listed.candidates) {
      const [before, after] = [
        nominalRun(listed, listed, candidate),
        nominalRun(measured, believed, candidate),
      ];
      expect(after.assumed).toEqual(before.assumed);
      expect(after.motor.listedStallEffort).toBe(before.motor.listedStallEffort);
      expect(after.findings).toEqual(expect.arrayContaining(listingOf(listed, candidate).findings));
    }
    expect(listed.provenance).toEqual(measured.provenance);
    expect(believed.packs).toContain(believed.pack);
  });

  it('are told in the unit in which they were written', () => {
    for (const entry of believed.provenance) {
      const read = measured.provenance.find(({ path }) => path === entry.path)!;
      const unit = (shown: string) => /^-?[\d.,]+ ([^()]+?)(?: \(|$)/.exec(shown)?.[1];
      expect(unit(entry.shown), entry.path).toBe(unit(read.shown));
    }
  });
});
