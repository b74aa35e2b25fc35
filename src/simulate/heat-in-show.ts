import { settledWindingK, type ThermalParameters, twoNode, twoNodeStep } from '../physics/thermal.js';
import type { HeatLoad } from './heat-load.js';

/** Hottest moments of a show that has looped for a long time. */
export interface ShowHeat {
  windingK: number;
  caseK: number;
}

/** Temperature change between rounds below which the loop counts as settled. */
const settledToK = 1e-4;

/** Rounds after which a loop that still warms counts as running away. */
const mostRounds = 60;

/**
 * Highest settled winding and case temperature within the looped show; null = it never settles. (M19)
 *
 * The mean temperature comes from a root search; the ripple within the loop is then the exact periodic solution of
 * the two heat lumps, with the copper of every sample at its own temperature, repeated until it stands still.
 */
export function settledShowHeat(parameters: ThermalParameters, heat: HeatLoad): ShowHeat | null {
  const meanK = settledWindingK(parameters, (windingK) => heat.meanCopperW(windingK), heat.meanGearW());
  if (meanK === null) return null;
  const node = twoNode(parameters);
  const temperaturesK = new Float64Array(heat.count).fill(meanK);
  const powersW = new Float64Array(heat.count);
  const rises = new Float64Array(2);
  const airK = parameters.airTemperatureK;
  for (let round = 0; round < mostRounds; round++) {
    for (let k = 0; k < heat.count; k++) powersW[k] = heat.copperW(k, temperaturesK[k]!);
    periodicStart(node, heat, powersW, rises);
    let highestWinding = rises[0]!;
    let highestCase = rises[1]!;
    let largestChangeK = 0;
    for (let k = 0; k < heat.count; k++) {
      const before = rises[0]!;
      twoNodeStep(node, rises, powersW[k]!, heat.gearHeatsW[k]!, heat.durationsS[k]!);
      const middleK = airK + (before + rises[0]!) / 2;
      largestChangeK = Math.max(largestChangeK, Math.abs(middleK - temperaturesK[k]!));
      temperaturesK[k] = middleK;
      highestWinding = Math.max(highestWinding, rises[0]!);
      highestCase = Math.max(highestCase, rises[1]!);
    }
    if (largestChangeK < settledToK) return { windingK: airK + highestWinding, caseK: airK + highestCase };
    if (!(highestWinding < 1000)) return null;
  }
  return null;
}

/** Rises at the start of a loop that come back to themselves after it: (1 − M)·x = c. */
function periodicStart(
  node: ReturnType<typeof twoNode>,
  heat: HeatLoad,
  powersW: Float64Array,
  rises: Float64Array,
): void {
  rises.fill(0);
  for (let k = 0; k < heat.count; k++) {
    twoNodeStep(node, rises, powersW[k]!, heat.gearHeatsW[k]!, heat.durationsS[k]!);
  }
  const first = Float64Array.of(1, 0);
  const second = Float64Array.of(0, 1);
  twoNodeStep(node, first, 0, 0, heat.totalS);
  twoNodeStep(node, second, 0, 0, heat.totalS);
  const a = 1 - first[0]!;
  const b = -second[0]!;
  const c = -first[1]!;
  const d = 1 - second[1]!;
  const determinant = a * d - b * c;
  const winding = (d * rises[0]! - b * rises[1]!) / determinant;
  const box = (a * rises[1]! - c * rises[0]!) / determinant;
  rises[0] = winding;
  rises[1] = box;
}
