import { type ThermalParameters, twoNode } from '../../physics/thermal.js';
import type { CueLoads } from './cue-loads.js';
import { coolRiseK, warmRiseK } from './drive-state.js';

/** Hotter than this above the air counts as running away. */
const runawayRiseK = 650;

/** Passes in which cues take the heat of their own temperature. */
const passes = 3;

/**
 * Settled heat of a looped show from cue means, copper feedback included, draw after draw. (M19)
 *
 * Heat is straight in the winding's temperature, so the mean temperature is a division; the ripple is the exact
 * periodic solution of the two heat lumps over the cues.
 */
export class QuickHeat {
  windingRiseK = 0;
  caseRiseK = 0;
  /** How a cue carries heat on: the two weights of exp(M·t) at its end, and the same averaged over it. */
  private readonly endShares: Float64Array;
  private readonly endSteadies: Float64Array;
  private readonly meanShares: Float64Array;
  private readonly meanSteadies: Float64Array;
  private readonly rises: Float64Array;

  constructor(cueCount: number) {
    this.endShares = new Float64Array(cueCount);
    this.endSteadies = new Float64Array(cueCount);
    this.meanShares = new Float64Array(cueCount);
    this.meanSteadies = new Float64Array(cueCount);
    this.rises = new Float64Array(cueCount);
  }

  /** Solve one draw; Infinity when it never settles. */
  solve(parameters: ThermalParameters, loads: CueLoads): void {
    const { count, totalS, durationsS, coolHeatsW, warmHeatsW, gearHeatsW } = loads;
    let coolW = 0;
    let warmW = 0;
    let gearW = 0;
    for (let c = 0; c < count; c++) {
      coolW += coolHeatsW[c]! * durationsS[c]!;
      warmW += warmHeatsW[c]! * durationsS[c]!;
      gearW += gearHeatsW[c]! * durationsS[c]!;
    }
    const slopeWPerK = (warmW - coolW) / totalS / (warmRiseK - coolRiseK);
    const zeroW = coolW / totalS - slopeWPerK * coolRiseK;
    const throughK = parameters.windingToCaseKPerW + parameters.caseToAirKPerW;
    const settled =
      (throughK * zeroW + parameters.caseToAirKPerW * (gearW / totalS)) / (1 - throughK * slopeWPerK);
    if (!(throughK * slopeWPerK < 1) || !(settled < runawayRiseK)) {
      this.windingRiseK = Number.POSITIVE_INFINITY;
      this.caseRiseK = Number.POSITIVE_INFINITY;
      return;
    }
    this.ripple(parameters, loads, settled);
  }

  private ripple(parameters: ThermalParameters, loads: CueLoads, settledRiseK: number): void {
    const { count, totalS, durationsS, coolHeatsW, warmHeatsW, gearHeatsW } = loads;
    const { endShares, endSteadies, meanShares, meanSteadies, rises } = this;
    const { caseToAirKPerW, windingToCaseKPerW } = parameters;
    const node = twoNode(parameters);
    const { slowRatePerS: s, fastRatePerS: f, windingRatePerS: w, casePullPerS: p } = node;
    const span = f - s;
    const c2 = s + f - w;
    for (let c = 0; c < count; c++) {
      const slow = Math.exp(-s * durationsS[c]!);
      const fast = Math.exp(-f * durationsS[c]!);
      const meanSlow = (1 - slow) / (s * durationsS[c]!);
      const meanFast = (1 - fast) / (f * durationsS[c]!);
      endShares[c] = (slow - fast) / span;
      endSteadies[c] = (slow * f - fast * s) / span;
      meanShares[c] = (meanSlow - meanFast) / span;
      meanSteadies[c] = (meanSlow * f - meanFast * s) / span;
      rises[c] = settledRiseK;
    }
    const slowLoop = Math.exp(-s * totalS);
    const fastLoop = Math.exp(-f * totalS);
    const shareLoop = (slowLoop - fastLoop) / span;
    const steadyLoop = (slowLoop * f - fastLoop * s) / span;
    // 1 − exp(M·loop), inverted by hand.
    const a = 1 - (steadyLoop - w * shareLoop);
    const b = -w * shareLoop;
    const d = -p * shareLoop;
    const e = 1 - (steadyLoop - c2 * shareLoop);
    const determinant = a * e - b * d;
    for (let pass = 0; pass < passes; pass++) {
      let winding = 0;
      let box = 0;
      for (let round = 0; round < 2; round++) {
        let highestWinding = winding;
        let highestCase = box;
        for (let c = 0; c < count; c++) {
          const warm = (rises[c]! - coolRiseK) / (warmRiseK - coolRiseK);
          const heatW = coolHeatsW[c]! + warm * (warmHeatsW[c]! - coolHeatsW[c]!);
          const caseSettled = caseToAirKPerW * (heatW + gearHeatsW[c]!);
          const windingSettled = caseSettled + windingToCaseKPerW * heatW;
          const share = endShares[c]!;
          const steady = endSteadies[c]!;
          const windingOff = winding - windingSettled;
          const caseOff = box - caseSettled;
          const nextWinding = windingSettled + (steady - w * share) * windingOff + w * share * caseOff;
          const nextCase = caseSettled + p * share * windingOff + (steady - c2 * share) * caseOff;
          if (round === 1) {
            // The copper of a cue at its mean temperature.
            const meanShare = meanShares[c]!;
            rises[c] =
              windingSettled + (meanSteadies[c]! - w * meanShare) * windingOff + w * meanShare * caseOff;
            if (nextWinding > highestWinding) highestWinding = nextWinding;
            if (nextCase > highestCase) highestCase = nextCase;
          }
          winding = nextWinding;
          box = nextCase;
        }
        if (round === 0) {
          const startWinding = (e * winding - b * box) / determinant;
          box = (a * box - d * winding) / determinant;
          winding = startWinding;
        } else {
          this.windingRiseK = highestWinding;
          this.caseRiseK = highestCase;
        }
      }
    }
  }
}
