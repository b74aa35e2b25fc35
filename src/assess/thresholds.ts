import { cited } from '../sources/sources.js';
import { kelvinOf } from './figures.js';

/** Where cautions, charts, the day and the verdict begin to speak, each in this place only. */

/** Share of draws from which something is clear. (M25) */
export const clearFrom = 0.9;

/** Share of draws from which something is likely, which is sure enough for a redesign. (M25) */
export const likelyFrom = 0.75;

/** Share of draws from which a lesser change passes surely enough; a nominal pass in fewer is one on paper. (M25) */
export const surePassFrom = 0.8;

/** A lesser change has to reach so much of what the leader would gain in score. (M25) */
export const enoughGain = 0.7;

/** Quasi-static force on a person from which to be careful. */
export const carefulForceN = cited(
  65,
  'iso-ts-15066',
  'order of the lowest limits by body part; from memory',
);

/** Quasi-static force on a person from which it is severe. */
export const severeForceN = cited(
  140,
  'iso-ts-15066',
  'order of the limits for hands and fingers; from memory',
);

/** Energy of one lithium-ion battery that travels on passenger aircraft without approval. */
export const freeWh = cited(100, 'iata-batteries', 'spare lithium-ion batteries');

/** Energy of one lithium-ion battery that travels with the approval of the airline; none travels above. */
export const approvalWh = cited(160, 'iata-batteries', 'spare lithium-ion batteries');

/** Eight hours of contact with skin, any material. */
export const longContactK = cited(kelvinOf(43), 'iso-13732-1', 'burn thresholds, long contact; from memory');

/** No small drive survives a case that hot: plastic, grease and magnets give up before (from experience). */
export const destroyedCaseK = kelvinOf(150);

/** Effort over the largest load from which a drive has enough in hand, friction and bad days included (from experience). */
export const enoughMarginRatio = 1.3;
