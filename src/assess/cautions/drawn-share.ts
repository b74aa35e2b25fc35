import { type OutcomeName, outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { CautionSeverity } from '../assessment.js';
import { inDraws } from '../certainty/sureness.js';
import type { Judged } from '../criterion-values.js';

/** From this share of draws on a danger that the nominal figures do not show is told, and is as severe as if they did. */
const worthTelling = 0.1;
const asGoodAsNominal = 0.5;

/** Share of draws in which an outcome is past something; null without draws. What does not occur is not past. */
export function shareOfDraws(
  { drawn }: Pick<Judged, 'drawn'>,
  outcome: OutcomeName,
  isPast: (value: number) => boolean,
): number | null {
  const column = drawn?.columns[outcomeIndex[outcome]];
  if (column === undefined || column.length === 0) return null;
  return column.reduce((count, value) => count + Number(isPast(value)), 0) / column.length;
}

/** `in 43 % of the draws`; only where something was drawn. */
export const inSoMany = (share: number | null): string => `in ${inDraws(share ?? 0)} of the draws`;

/** How bad a danger is that would be severe: by the nominal figures, or by the share of draws that run into it. */
export function drawnSeverity(
  isNominal: boolean,
  share: number | null,
): Extract<CautionSeverity, 'severe' | 'caution'> | null {
  if (isNominal || (share !== null && share >= asGoodAsNominal)) return 'severe';
  return share !== null && share >= worthTelling ? 'caution' : null;
}
