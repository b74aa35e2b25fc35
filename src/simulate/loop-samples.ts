/** What the drive does during a sample. */
export const sampleKinds = { move: 0, hold: 1, rest: 2 } as const;

/**
 * A played cue list cut into samples of constant load, as parallel arrays (`count` entries are in use).
 * Drive figures are of one drive; supply figures of everything on the pack.
 */
export interface LoopSamples {
  count: number;
  /** Length of all samples together. */
  totalS: number;
  cueIndexes: Int32Array;
  kinds: Uint8Array;
  durationsS: Float64Array;
  /** Feature coordinate in the middle of the sample. */
  positions: Float64Array;
  /** Effort along the motion: positive = the drive pushes; at hold the magnitude. */
  efforts: Float64Array;
  /** Magnitude of the drive's speed. */
  speeds: Float64Array;
  /** Motor current along the motion; negative while it brakes. */
  motorCurrentsA: Float64Array;
  /** Constant-power and constant-current part of one drive at its own bus, without idle current. */
  drivePowersW: Float64Array;
  driveCurrentsA: Float64Array;
  /** Idle current of one drive at its own bus. */
  idleCurrentsA: Float64Array;
  /** A and B of the whole load on the pack: I = A/V + B. */
  packPowersW: Float64Array;
  packCurrentsA: Float64Array;
}

/** Empty samples with room for `capacity` entries. */
export function emptySamples(capacity: number): LoopSamples {
  const numbers = () => new Float64Array(capacity);
  return {
    count: 0,
    totalS: 0,
    cueIndexes: new Int32Array(capacity),
    kinds: new Uint8Array(capacity),
    durationsS: numbers(),
    positions: numbers(),
    efforts: numbers(),
    speeds: numbers(),
    motorCurrentsA: numbers(),
    drivePowersW: numbers(),
    driveCurrentsA: numbers(),
    idleCurrentsA: numbers(),
    packPowersW: numbers(),
    packCurrentsA: numbers(),
  };
}

/** Pack current of a sample at a bus voltage. */
export function packCurrentAtA(samples: LoopSamples, index: number, busV: number): number {
  return samples.packPowersW[index]! / busV + samples.packCurrentsA[index]!;
}

/**
 * The same load on the pack with every so-many samples of a move taken together, for playing it over hours.
 * Their means keep charge and energy exactly; only the pack's side is filled in.
 * @param group samples of one cue and kind that become one, at least 1
 */
export function thinned(samples: LoopSamples, group: number): LoopSamples {
  const thin = emptySamples(samples.count);
  for (let k = 0; k < samples.count; ) {
    const into = thin.count++;
    const cue = samples.cueIndexes[k]!;
    const kind = samples.kinds[k]!;
    let durationS = 0;
    let powerJ = 0;
    let chargeC = 0;
    for (let taken = 0; taken < group && k < samples.count; taken++, k++) {
      if (samples.cueIndexes[k] !== cue || samples.kinds[k] !== kind) break;
      durationS += samples.durationsS[k]!;
      powerJ += samples.packPowersW[k]! * samples.durationsS[k]!;
      chargeC += samples.packCurrentsA[k]! * samples.durationsS[k]!;
    }
    thin.cueIndexes[into] = cue;
    thin.kinds[into] = kind;
    thin.durationsS[into] = durationS;
    thin.packPowersW[into] = powerJ / durationS;
    thin.packCurrentsA[into] = chargeC / durationS;
    thin.totalS += durationS;
  }
  return thin;
}
