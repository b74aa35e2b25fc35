import { driveCountOf } from '../../simulate/burdens.js';
import { busOf } from '../../simulate/bus.js';
import { loadsDraw } from '../../simulate/play-loop.js';
import type { Candidate, Study } from '../../study/study.js';

/**
 * Pack current of all drives while the feature lies on a stop: their idle electronics, and nothing at all where
 * the power is off at rest. At the pack's nominal voltage.
 */
export function driveRestCurrentA(study: Study, candidate: Candidate): number {
  const { sheet } = candidate;
  if (!sheet.poweredAtRest) return 0;
  const bus = busOf(study.pack, sheet);
  const idleA = driveCountOf(study, candidate) * sheet.idleCurrentA;
  return bus.regulated ? (bus.nominalV * idleA) / (bus.regulatorEfficiency * bus.packNominalV) : idleA;
}

/**
 * Pack current while powered and resting: resting drives, loads that are always drawn, and what converters idle
 * away; lights off. At the pack's nominal voltage.
 */
export function stillCurrentA(study: Study, candidate: Candidate): number {
  const { packNominalV } = busOf(study.pack, candidate.sheet);
  const draw = { powerW: 0, currentA: 0 };
  loadsDraw(study.loads, 0, false, packNominalV, draw);
  return driveRestCurrentA(study, candidate) + draw.powerW / packNominalV + draw.currentA;
}
