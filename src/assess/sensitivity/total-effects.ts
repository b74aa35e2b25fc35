/** Two independent sets of draws of the same inputs, and what belongs together among them. */
export interface PairedDraws {
  drawCount: number;
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
 * Computes the outputs for one draw.
 * @param inputs one value per input; read, not kept
 * @param outputs one value per output, to be written; NaN where there is none
 */
export type Evaluate = (inputs: Float64Array, outputs: Float64Array) => void;

/**
 * Variance-based effects of groups of inputs, from half the mean square of the change that a group's exchange
 * makes. Costs (groups + 2) evaluations per draw. Estimates: a share near 0 may come out slightly negative (first)
 * and a total slightly above 1. An output that never varies has shares 0; draws in which it is NaN are left out.
 * @param outputCount how many outputs are written
 * @returns [output][group]
 * @source jansen, equations for total and first-order effects
 * @source saltelli, section 4.6
 */
export function groupEffects(draws: PairedDraws, evaluate: Evaluate, outputCount: number): GroupEffect[][] {
  const { a, b, groups } = draws;
  const plain = evaluateAll(draws, evaluate, outputCount, a);
  const other = evaluateAll(draws, evaluate, outputCount, b);
  const effects: GroupEffect[][] = plain.map(() => []);
  for (const group of groups) {
    const exchanged = a.map((column, input) => (group.includes(input) ? b[input]! : column));
    const mixed = evaluateAll(draws, evaluate, outputCount, exchanged);
    for (let o = 0; o < outputCount; o++) {
      effects[o]!.push(effectOf(plain[o]!, other[o]!, mixed[o]!));
    }
  }
  return effects;
}

/** Outputs as [output][draw]. */
function evaluateAll(
  { drawCount }: PairedDraws,
  evaluate: Evaluate,
  outputCount: number,
  columns: readonly Float64Array[],
): Float64Array[] {
  const inputs = new Float64Array(columns.length);
  const outputs = new Float64Array(outputCount);
  const all = Array.from({ length: outputCount }, () => new Float64Array(drawCount));
  for (let draw = 0; draw < drawCount; draw++) {
    for (let input = 0; input < inputs.length; input++) inputs[input] = columns[input]![draw]!;
    evaluate(inputs, outputs);
    for (let o = 0; o < outputCount; o++) all[o]![draw] = outputs[o]!;
  }
  return all;
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
