import { comparedAtM, levelAtOneMetreDb } from '../physics/sound.js';
import type { Candidate, Study } from '../study/study.js';

/** Drives of all features together. */
export const driveCountOf = (study: Study, candidate: Candidate): number =>
  study.feature.featureCount * candidate.sheet.drivesPerFeatureCount;

/**
 * Mass on the body or in the prop: drives with mounts and electronics, and the packs that come along.
 * @returns null when the mass of drive or pack is blank
 */
export function bodyMassKg(study: Study, candidate: Candidate): number | null {
  const { massKg, mountMassKg, electronicsMassKg } = candidate.sheet;
  if (massKg === null || study.pack.massKg === null) return null;
  const perDriveKg = massKg + (mountMassKg ?? 0) + (electronicsMassKg ?? 0);
  return driveCountOf(study, candidate) * perDriveKg + study.packsCarriedCount * study.pack.massKg;
}

/** Money to change to a candidate; the baseline is there already. null when a price is blank. */
export function costMoney(study: Study, candidate: Candidate): number | null {
  const { priceMoney, extraCostMoney } = candidate.sheet;
  const extra = extraCostMoney ?? 0;
  if (candidate.id === study.baselineId) return extra;
  return priceMoney === null ? null : driveCountOf(study, candidate) * priceMoney + extra;
}

/** Whether one drive goes into the free space in the best of six orientations; null when its size is blank. */
export function fitsSpace(study: Study, candidate: Candidate): boolean | null {
  const rooms = [study.space.lengthM, study.space.widthM, study.space.heightM];
  if (rooms.every((room) => room === null)) return true;
  const { lengthM, widthM, heightM } = candidate.sheet;
  if (lengthM === null || widthM === null || heightM === null) return null;
  // Sorted against sorted is the best of the six; no limit in a direction is endless room.
  const sides = [lengthM, widthM, heightM].sort((p, q) => p - q);
  const free = rooms.map((room) => room ?? Number.POSITIVE_INFINITY).sort((p, q) => p - q);
  return sides.every((side, index) => side <= free[index]!);
}

/** Sound level of the moving drive at 1 m, dB; null where none is listed. One with no distance was read there. */
export function noiseAtOneMetreDb({ sheet }: Candidate): number | null {
  const { noiseDb, noiseDistanceM } = sheet;
  return noiseDb === null ? null : levelAtOneMetreDb(noiseDb, noiseDistanceM ?? comparedAtM);
}
