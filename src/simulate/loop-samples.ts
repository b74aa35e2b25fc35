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
