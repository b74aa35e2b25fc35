import type { DriveSheet } from '../../src/drives/sheet.js';
import type { Criterion, CriterionId, Limit } from '../../src/study/choosing.js';
import type { Candidate, Study } from '../../src/study/study.js';
import { plainCandidate, plainPack, plainStudy } from '../simulate/plain-study.js';

export { run } from './hand-made-run.js';

/** Studies with round figures for the judging side, on the plain ones of the simulation. */

/** Three cylindrical cells, 10.8 V and 2 Ah, known by the resistance of a cell and a label of 10C. */
export const pack = plainPack('li-ion', {
  seriesCount: 3,
  capacityC: 2 * 3600,
  cellResistanceOhm: 0.05,
  dischargeRatingPerH: 10,
  massKg: 0.15,
});

const sheet: Partial<DriveSheet> = {
  ratedVoltageV: 12,
  noLoadSpeed: 2,
  stallEffort: 8,
  stallCurrentA: 4,
  maximumVoltageV: 14,
  massKg: 0.2,
  mountMassKg: 0.05,
  electronicsMassKg: 0.02,
  lengthM: 0.1,
  widthM: 0.05,
  heightM: 0.04,
  caseMaterial: 'metal',
  priceMoney: 40,
  extraCostMoney: 10,
  reworkTimeS: 3600,
  swapTimeS: 600,
  noiseDb: 50,
};

export const candidate = (id: string, changes: Partial<DriveSheet> = {}): Candidate =>
  plainCandidate('worm-gearmotor', { ...sheet, ...changes }, id);

export function criterion(
  id: CriterionId,
  weightScore: number,
  scale: [worthless: number, worthFull: number] | null = null,
  must: Limit | null = null,
): Criterion {
  const [worthless, worthFull] = scale ?? [null, null];
  return { id, weightScore, worthless, worthFull, must, origin: 'given', note: '' };
}

/** A worn hinge feature of 1 kg that balances at 0.3 m, with fuse and protection board. */
export function study(candidates: Candidate[], criteria: Criterion[], changes: Partial<Study> = {}): Study {
  const plain = plainStudy({ candidates, criteria, pack, packs: [pack] });
  return {
    ...plain,
    feature: {
      ...plain.feature,
      massKg: 1,
      balanceDistanceM: 0.3,
      tipDistanceM: 0.6,
      lowerStopPosition: -0.5,
      upperStopPosition: 1,
    },
    carrier: { ...plain.carrier, worn: true, activity: 'walk' },
    wiring: { ...plain.wiring, areaM2: 0.8e-6, fuseRatingA: 5, protectionTripA: 10, protectionDelayS: 0.1 },
    show: { leadIn: [], loop: [] },
    ...changes,
  };
}
