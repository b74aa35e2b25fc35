import type { ChangeBurden, LesserChangeId } from './lesser-change.js';

/** Printed beside every figure of the table below. */
const burdenBasis =
  'mass, money and hours are assumed: from experience with small features, no published source';

const hourS = 3600;

/**
 * What a lesser change takes, for one feature: mass on it or on the body, money for material, hours of work.
 * From experience, no published source; the pack's own mass and price come from the study, and what is shaved
 * off is worked out where it is proposed.
 */
const table: Record<LesserChangeId, [massKg: number, costMoney: number, workTimeS: number]> = {
  // New skin, ribs or lamps for the outer part.
  'mass-shaved': [0, 10, 6 * hourS],
  // Felt for the stop, a switch in the drive's supply, the cue list.
  'rest-on-stop': [0.015, 6, 2 * hourS],
  // Hook, small pull magnet or servo to release it, wiring.
  'hold-latch': [0.09, 20, 8 * hourS],
  'slower-moves': [0, 0, 0.5 * hourS],
  'much-slower-moves': [0, 0, 0.5 * hourS],
  'dimmer-lights': [0, 0, 0.25 * hourS],
  // A second holder; the pack comes on top.
  'packs-in-turn': [0.01, 3, 0.5 * hourS],
  // Forked lead and two fuse holders; the pack comes on top.
  'packs-in-parallel': [0.025, 10, 2 * hourS],
  // Two brackets and screws; the spring's own mass comes on top.
  'assist-spring': [0.03, 12, 4 * hourS],
  // Anchor post, eyelet and cord; the spring's own mass comes on top.
  'anchored-coil': [0.04, 10, 4 * hourS],
};

/**
 * The burden of a change on all features together; work on a second equal feature goes about as slowly as on
 * the first.
 * @param features how many get the change; 1 for what is done once, such as packs and cue list
 */
export function assumedBurden(id: LesserChangeId, features = 1): ChangeBurden {
  const [massKg, costMoney, workTimeS] = table[id];
  return {
    massKg: features * massKg,
    costMoney: features * costMoney,
    workTimeS: features * workTimeS,
    basis: burdenBasis,
  };
}

/** Energy that a kilogram of steel spring stores when it is worked as hard as it lasts (from experience). */
const springEnergyJPerKg = 100;

/** The burden with a spring that has to store so much, on each of so many features. */
export function withSpringMass(burden: ChangeBurden, storedJ: number, features: number): ChangeBurden {
  return { ...burden, massKg: burden.massKg + (features * storedJ) / springEnergyJPerKg };
}

/** Two burdens carried together. */
export function bothBurdens(a: ChangeBurden, b: ChangeBurden): ChangeBurden {
  return {
    massKg: a.massKg + b.massKg,
    costMoney: a.costMoney === null || b.costMoney === null ? null : a.costMoney + b.costMoney,
    workTimeS: a.workTimeS + b.workTimeS,
    basis: a.basis === b.basis ? a.basis : `${a.basis}; ${b.basis}`,
  };
}
