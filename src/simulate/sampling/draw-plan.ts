import { type Bounds, quantile } from '../../quantity/quantile.js';
import type { SpreadValue } from '../../quantity/spread.js';
import type { EnsembleScheme, SampledInput } from '../ensemble/ensemble.js';
import { factorBounds, fillDraws, fillMultiplied } from './inverse.js';
import { latinColumn } from './latin-hypercube.js';
import { fillSobol, sobolDimensionCount, sobolShift } from './sobol.js';

/** Name of the scheme, as kept with every result. */
export const generatorName = 'sobol-joe-kuo-shifted+latin-hypercube/sfc32';

/** An input to be drawn. */
export interface PlannedInput extends Omit<SampledInput, 'values'>, SpreadValue {
  /** Physical bounds, SI; null when there are none. */
  bounds: Bounds | null;
  /** The spread is one of factors on the nominal figure, not of the figure itself. */
  ofFactors?: boolean;
}

/** Which part of the sequences a plan takes: two plans with nothing in common are independent of each other. */
export interface PlanOptions {
  /** First dimension of the Sobol' sequence to use. */
  firstDimensionIndex?: number;
  /** Most dimensions to use; at most 16 after the first. */
  dimensionCount?: number;
  /** Sets the hypercube columns of one plan apart from those of another with the same seed. */
  copy?: string;
}

/**
 * Which share each input has in each draw: the inputs with the widest spread from the shifted Sobol' sequence, the
 * others from columns of a Latin hypercube. Depends on seed and paths only, so that any range of draws can be made
 * by itself and gives the same numbers.
 */
export class DrawPlan {
  private readonly dimensions = new Map<number, number>();
  private readonly copy: string;
  /** How the draws are made, for the record. */
  readonly scheme: EnsembleScheme;

  /**
   * @param inputs each path once
   * @param seed whole number
   * @param drawCount best a power of two, for which the Sobol' points are even
   */
  constructor(
    readonly inputs: readonly PlannedInput[],
    seed: number,
    readonly drawCount: number,
    options: PlanOptions = {},
  ) {
    const first = options.firstDimensionIndex ?? 0;
    const most = Math.min(options.dimensionCount ?? sobolDimensionCount, sobolDimensionCount - first);
    const widest = mostSpread(inputs).slice(0, most);
    widest.forEach((input, place) => {
      this.dimensions.set(input, first + place);
    });
    this.copy = options.copy ?? '';
    this.scheme = { generator: generatorName, seed, sobolPaths: widest.map((input) => inputs[input]!.path) };
  }

  /**
   * Shares of one input, strictly between 0 and 1.
   * @param inputIndex place among the inputs
   * @param from first draw
   * @param to one past the last draw
   */
  uniforms(inputIndex: number, from = 0, to = this.drawCount): Float64Array {
    const { seed } = this.scheme;
    const dimension = this.dimensions.get(inputIndex);
    if (dimension === undefined) {
      const name = `${this.copy}${this.inputs[inputIndex]!.path}`;
      return latinColumn(seed, name, this.drawCount).subarray(from, to);
    }
    const shares = new Float64Array(to - from);
    fillSobol(dimension, sobolShift(seed, dimension), from, shares);
    return shares;
  }

  /** Draws of one input, SI; arguments as for its shares. */
  values(inputIndex: number, from = 0, to = this.drawCount): Float64Array {
    const { spread, nominal, bounds, ofFactors } = this.inputs[inputIndex]!;
    const values = new Float64Array(to - from);
    if (spread === null || spread.shape === 'exact') return values.fill(nominal);
    const fill = ofFactors === true ? fillMultiplied : fillDraws;
    fill(spread, nominal, bounds, this.uniforms(inputIndex, from, to), values);
    return values;
  }

  /** All draws of every input that has a spread. */
  sampledInputs(): SampledInput[] {
    return this.inputs.flatMap(({ path, field, owner, shared, spread }, index) =>
      spread === null || spread.shape === 'exact'
        ? []
        : [{ path, field, owner, shared, values: this.values(index) }],
    );
  }
}

/**
 * Distance between the 10 % and the 90 % point over the size of the figure, of the factor where it is one; 0 when
 * exact. For a figure of 0 the mean size of the two points stands in.
 */
export function relativeWidthRatio({ spread, nominal, bounds, ofFactors }: PlannedInput): number {
  const centre = ofFactors === true ? 1 : nominal;
  const limits = (ofFactors === true ? factorBounds(nominal, bounds) : bounds) ?? undefined;
  const low = quantile(spread, centre, 0.1, limits);
  const high = quantile(spread, centre, 0.9, limits);
  if (!(high > low)) return 0;
  return (high - low) / (centre !== 0 ? Math.abs(centre) : (Math.abs(low) + Math.abs(high)) / 2);
}

/** Places of the inputs that have a spread, widest first, equal ones by path. */
function mostSpread(inputs: readonly PlannedInput[]): number[] {
  const widths = inputs.map(relativeWidthRatio);
  const path = (index: number) => inputs[index]!.path;
  return [...inputs.keys()]
    .filter((index) => widths[index]! > 0)
    .sort((a, b) => widths[b]! - widths[a]! || (path(a) < path(b) ? -1 : 1));
}
