/** Two independent sets of draws of the same inputs, and what belongs together among them. */
export interface PairedDraws {
  /** Per input one value per draw. */
  a: readonly Float64Array[];
  /** Likewise, independent of the first. */
  b: readonly Float64Array[];
  /** Places of the inputs in each group; inputs in no group stay as in the first set. */
  groups: readonly (readonly number[])[];
}

/** How much of the spread of one output comes from one group of inputs. */
export interface GroupEffect {
  /** Share of the variance that would remain if all else were known: alone and together with others. */
  totalFraction: number;
  /** Share of the variance that would go if the group were known; without what it does together with others. */
  firstFraction: number;
  /** Draws in which the output exists in all three runs that are compared. */
  usedCount: number;
}

/**
 * Computes the outputs of all draws.
 * @param inputs per input one value per draw; read, not kept
 * @returns per output one value per draw; NaN where there is none
 */
export type Outputs = (inputs: readonly Float64Array[]) => Float64Array[];

/**
 * Variance-based effects of groups of inputs, from half the mean square of the change that a group's exchange
 * makes. Costs (groups + 2) evaluations of all draws. Estimates: a share near 0 may come out slightly negative (first)
 * and a total slightly above 1. An output that never varies has shares 0; draws in which it is NaN are left out.
 * @returns [output][group]
 * @source jansen, equations for total and first-order effects
 * @source saltelli, section 4.6
 */
export function groupEffects({ a, b, groups }: PairedDraws, outputsOf: Outputs): GroupEffect[][] {
  const plain = outputsOf(a);
  const other = outputsOf(b);
  const effects: GroupEffect[][] = plain.map(() => []);
  for (const group of groups) {
    const mixed = outputsOf(a.map((column, input) => (group.includes(input) ? b[input]! : column)));
    effects.forEach((own, output) => {
      own.push(effectOf(plain[output]!, other[output]!, mixed[output]!));
    });
  }
  return effects;
}

/**
 * @param plain output on the first set
 * @param other on the second
 * @param mixed on the first with the group taken from the second
 */
function effectOf(plain: Float64Array, other: Float64Array, mixed: Float64Array): GroupEffect {
  let usedCount = 0;
  let [mean, squares, own, rest] = [0, 0, 0, 0];
  for (let i = 0; i < plain.length; i++) {
    const [y, z, m] = [plain[i]!, other[i]!, mixed[i]!];
    if (Number.isNaN(y + z + m)) continue;
    usedCount++;
    own += (y - m) ** 2;
    rest += (z - m) ** 2;
    // Running mean and squared deviations over both sets, so that a large mean costs no digits.
    const beforeY = y - mean;
    mean += beforeY / (2 * usedCount - 1);
    squares += beforeY * (y - mean);
    const beforeZ = z - mean;
    mean += beforeZ / (2 * usedCount);
    squares += beforeZ * (z - mean);
  }
  if (!(squares > 0)) return { totalFraction: 0, firstFraction: 0, usedCount };
  // Σ of 2n squared deviations over Σ of n squared changes: the halves cancel.
  return { totalFraction: own / squares, firstFraction: 1 - rest / squares, usedCount };
}
