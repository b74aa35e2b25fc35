import type { DriveSheet } from '../drives/sheet.js';
import {
  boxSurfaceM2,
  caseToAirKPerW,
  surfaceFromMassM2,
  type ThermalParameters,
} from '../physics/thermal.js';
import type { Air } from '../study/feature.js';

/** Mass taken for heat alone when the sheet gives none: a common hobby servo. */
const usualMassKg = 0.06;

/** Split of a drive's mass, and specific heats: copper winding; steel, zinc and plastic case (from experience). */
const windingMassFraction = 0.1;
const windingHeatJPerKgK = 400;
const caseHeatJPerKgK = 800;

/** Mass used for the heat capacities. */
export const thermalMassKg = (sheet: DriveSheet): number => sheet.massKg ?? usualMassKg;

/** Surface of the envelope box, or of a drive of that mass when the box is not known. */
export function surfaceM2(sheet: DriveSheet): number {
  const { lengthM, widthM, heightM } = sheet;
  if (lengthM !== null && widthM !== null && heightM !== null) return boxSurfaceM2(lengthM, widthM, heightM);
  return surfaceFromMassM2(thermalMassKg(sheet));
}

/** One drive as winding and case in its air, blanks filled from size and mass. (M19) */
export function thermalOf(sheet: DriveSheet, air: Air): ThermalParameters {
  const massKg = thermalMassKg(sheet);
  return {
    windingToCaseKPerW: sheet.windingToCaseKPerW,
    caseToAirKPerW: sheet.caseToAirKPerW ?? caseToAirKPerW(surfaceM2(sheet), air.buried),
    windingHeatCapacityJPerK:
      sheet.windingHeatCapacityJPerK ?? windingMassFraction * massKg * windingHeatJPerKgK,
    caseHeatCapacityJPerK:
      sheet.caseHeatCapacityJPerK ?? (1 - windingMassFraction) * massKg * caseHeatJPerKgK,
    airTemperatureK: air.temperatureK,
  };
}
