import { power } from '../quantity/power.js';
import { findRoot } from './integrate.js';

/** A drive as two lumps of heat: winding and case. */
export interface ThermalParameters {
  windingToCaseKPerW: number;
  caseToAirKPerW: number;
  windingHeatCapacityJPerK: number;
  caseHeatCapacityJPerK: number;
  airTemperatureK: number;
}

/** Convection and radiation from a small warm case; common practice. */
const surfaceWPerM2K = 10;

/** Foam or loose fabric, and the layer of it that covers a buried drive; from memory. */
const coverWPerMK = 0.035;
const coverM = 0.02;

/** A plain small drive: surface in m² at its mass in kg; from memory. */
const plainDriveM2 = 0.006;
const plainDriveKg = 0.06;

/** Highest winding temperature that is looked for: 400 °C. */
const runawayK = 673.15;

/** Climbing to the settled temperature: rounds, when it has settled, and how far past it a step may land. */
const climbRounds = 12;
const settledToK = 1e-9;
const largestOvershootK = 0.5;

/** Intervals of the search for the lowest settled temperature. */
const searchCount = 48;

/**
 * Surface of a box: plain geometry.
 * @param lengthM one edge
 * @param widthM another edge
 * @param heightM the third edge
 * @returns m²
 */
export function boxSurfaceM2(lengthM: number, widthM: number, heightM: number): number {
  return 2 * (lengthM * widthM + lengthM * heightM + widthM * heightM);
}

/**
 * Surface of a drive of which only the mass is known: similar shapes grow with mass^(2/3). From memory.
 * @param massKg of the drive
 * @returns m²
 */
export function surfaceFromMassM2(massKg: number): number {
  return plainDriveM2 * power(massKg / plainDriveKg, 2 / 3);
}

/**
 * Thermal resistance from a case to the air; a buried one is taken as a sphere in a shell of cover.
 * @param areaM2 surface of the case
 * @param buried covered by foam or fabric
 * @returns K/W
 * @source incropera, section 3.3.2, conduction in a spherical shell (M19)
 */
export function caseToAirKPerW(areaM2: number, buried: boolean): number {
  if (!buried) return 1 / (surfaceWPerM2K * areaM2);
  const innerM = Math.sqrt(areaM2 / (4 * Math.PI));
  const outerM = innerM + coverM;
  const shell = (1 / innerM - 1 / outerM) / (4 * Math.PI * coverWPerMK);
  return shell + 1 / (surfaceWPerM2K * 4 * Math.PI * outerM * outerM);
}

/**
 * Heat in the gearing: what the motor turns into motion less what leaves at the output; never negative.
 * @param speedConstant V·s/rad or V·s/m
 * @param speed of the output
 * @param currentA motor current, same direction as the speed
 * @param effort at the output, same direction as the speed
 * @returns W
 * @source hughes-drury, chapter 3, energy balance (M19)
 */
export function gearHeatW(speedConstant: number, speed: number, currentA: number, effort: number): number {
  return Math.max(0, (speedConstant * currentA - effort) * speed);
}

/** What the two lumps of heat need per step, worked out once: rates in 1/s. */
export interface TwoNode {
  windingToCaseKPerW: number;
  caseToAirKPerW: number;
  /** Winding relaxing towards the case. */
  windingRatePerS: number;
  /** Case pulled by the winding. */
  casePullPerS: number;
  /** The two rates of the pair. */
  slowRatePerS: number;
  fastRatePerS: number;
}

/**
 * Rates of a pair of heat lumps.
 * @param parameters resistances and capacities above 0
 * @source incropera, chapter 5, lumped capacitance, two lumps (M19)
 */
export function twoNode(parameters: ThermalParameters): TwoNode {
  const between = 1 / parameters.windingToCaseKPerW;
  const outward = 1 / parameters.caseToAirKPerW;
  const windingRatePerS = between / parameters.windingHeatCapacityJPerK;
  const casePullPerS = between / parameters.caseHeatCapacityJPerK;
  const sum = windingRatePerS + casePullPerS + outward / parameters.caseHeatCapacityJPerK;
  const product = (windingRatePerS * outward) / parameters.caseHeatCapacityJPerK;
  const fastRatePerS = (sum + Math.sqrt(sum * sum - 4 * product)) / 2;
  return {
    windingToCaseKPerW: parameters.windingToCaseKPerW,
    caseToAirKPerW: parameters.caseToAirKPerW,
    windingRatePerS,
    casePullPerS,
    slowRatePerS: product / fastRatePerS,
    fastRatePerS,
  };
}

/**
 * Both temperatures after a time at constant powers: the exact solution, whatever the time.
 * @param node from `twoNode`
 * @param rises [winding, case] above the air, K; changed in place
 * @param windingPowerW heat into the winding
 * @param casePowerW heat into the case
 * @param timeS at least 0
 * @source incropera, chapter 5, lumped capacitance, two lumps (M19)
 */
export function twoNodeStep(
  node: TwoNode,
  rises: Float64Array,
  windingPowerW: number,
  casePowerW: number,
  timeS: number,
): void {
  const settledCase = settledCaseRiseK(node, windingPowerW, casePowerW);
  const settledWinding = settledWindingRiseK(node, windingPowerW, casePowerW);
  const winding = rises[0]! - settledWinding;
  const box = rises[1]! - settledCase;
  const slow = Math.exp(-node.slowRatePerS * timeS);
  const fast = Math.exp(-node.fastRatePerS * timeS);
  // exp(M t) of the 2 × 2 matrix M = [[−w, w], [p, −c]] by its two eigenvalues −s and −f:
  // (slow·(M + f) − fast·(M + s)) / (f − s)
  const span = node.fastRatePerS - node.slowRatePerS;
  const share = (slow - fast) / span;
  const w = node.windingRatePerS;
  const c = node.slowRatePerS + node.fastRatePerS - w;
  const steady = (slow * node.fastRatePerS - fast * node.slowRatePerS) / span;
  rises[0] = settledWinding + (steady - w * share) * winding + w * share * box;
  rises[1] = settledCase + node.casePullPerS * share * winding + (steady - c * share) * box;
}

/**
 * Rise of the case above the air after a long time at constant powers.
 * @param resistances case to air
 * @param windingPowerW heat into the winding
 * @param casePowerW heat into the case
 * @returns K
 * @source incropera, section 3.1, thermal resistances in series (M19)
 */
export function settledCaseRiseK(
  resistances: Pick<ThermalParameters, 'caseToAirKPerW'>,
  windingPowerW: number,
  casePowerW: number,
): number {
  return resistances.caseToAirKPerW * (windingPowerW + casePowerW);
}

/**
 * Rise of the winding above the air after a long time at constant powers.
 * @param resistances winding to case and case to air
 * @param windingPowerW heat into the winding
 * @param casePowerW heat into the case
 * @returns K
 * @source incropera, section 3.1, thermal resistances in series (M19)
 */
export function settledWindingRiseK(
  resistances: Pick<ThermalParameters, 'windingToCaseKPerW' | 'caseToAirKPerW'>,
  windingPowerW: number,
  casePowerW: number,
): number {
  return (
    settledCaseRiseK(resistances, windingPowerW, casePowerW) + resistances.windingToCaseKPerW * windingPowerW
  );
}

/**
 * Lowest winding temperature at which the drive settles when its copper heat depends on that temperature.
 * null when it does not settle below the maximum: thermal runaway.
 * @param parameters of the drive and its air
 * @param powerOfWindingTemperature W at a winding temperature in K
 * @param gearPowerW heat in the gearing, into the case
 * @param maximumK highest temperature that counts as settled
 * @returns K
 * @source incropera, section 3.1, thermal resistances in series (M19)
 */
export function settledWindingK(
  parameters: ThermalParameters,
  powerOfWindingTemperature: (windingK: number) => number,
  gearPowerW: number,
  maximumK = runawayK,
): number | null {
  const excess = (windingK: number): number =>
    parameters.airTemperatureK +
    settledWindingRiseK(parameters, powerOfWindingTemperature(windingK), gearPowerW) -
    windingK;
  const startK = parameters.airTemperatureK;
  return climbTo(excess, startK, maximumK) ?? searchFor(excess, startK, maximumK);
}

/**
 * Lowest root by climbing from below along secants. Heat grows at least in proportion with temperature, so the
 * excess bends upwards and a secant never overshoots its lowest root by much; where one does, nothing is said.
 */
function climbTo(excess: (windingK: number) => number, startK: number, maximumK: number): number | null {
  let lastK = startK;
  let last = excess(lastK);
  if (last <= 0) return startK;
  let nextK = startK + Math.min(last, 1);
  for (let round = 0; round < climbRounds && nextK < maximumK; round++) {
    const next = excess(nextK);
    if (Math.abs(next) < settledToK) return nextK;
    const slope = (next - last) / (nextK - lastK);
    if (!(slope < 0) || next < -largestOvershootK) return null;
    lastK = nextK;
    last = next;
    nextK = lastK - last / slope;
  }
  return null;
}

/** Lowest root by looking at every few kelvin; null = none below the maximum. */
function searchFor(excess: (windingK: number) => number, startK: number, maximumK: number): number | null {
  if (excess(startK) <= 0) return startK;
  let lowK = startK;
  for (let i = 1; i <= searchCount; i++) {
    const highK = startK + ((maximumK - startK) * i) / searchCount;
    if (excess(highK) <= 0) return findRoot(excess, lowK, highK, 1e-9);
    lowK = highK;
  }
  return null;
}
