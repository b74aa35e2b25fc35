import type { Finding } from '../../drives/finding.js';
import { type OutcomeName, outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { LimitOutcome } from '../assessment.js';
import { criterionWords } from '../criterion-words.js';
import { isDrawn } from './drawn-figures.js';
import type { DrawnLimits } from './drawn-limits.js';
import { inDraws } from './sureness.js';

/** Share of draws with a clipped efficiency from which a sheet's figures do not belong together. */
const clippedShare = 0.3;

/** Fewer draws than this that pass make a nominal pass one on paper. */
export const onPaperBelow = 0.8;

/** What the draws say of the figures of one candidate. */
export function drawnFindings(
  columns: readonly Float64Array[],
  passes: boolean | null,
  limits: readonly LimitOutcome[],
  drawn: DrawnLimits,
): Finding[] {
  return [...clipped(columns), ...onPaper(passes, limits, drawn)];
}

function clipped(columns: readonly Float64Array[]): Finding[] {
  const column = columns[outcomeIndex['efficiencyClipped' satisfies OutcomeName]]!;
  const share = column.reduce((sum, value) => sum + value, 0) / column.length;
  if (!(share > clippedShare)) return [];
  return [
    {
      code: 'figures-do-not-belong-together',
      severity: 'odd',
      field: null,
      message: `These figures do not belong together: in ${inDraws(share)} of the draws about them more power comes out than the gearing of such a drive lets through, and the stall effort is lowered.`,
    },
  ];
}

/** Passes with its figures as they stand, but not with what they are worth. */
export function passesOnPaper(passes: boolean | null, probability: number | null): boolean {
  return passes === true && probability !== null && probability < onPaperBelow;
}

function onPaper(passes: boolean | null, limits: readonly LimitOutcome[], drawn: DrawnLimits): Finding[] {
  const { passProbability, limitProbabilities } = drawn;
  if (passProbability === null || !passesOnPaper(passes, passProbability)) return [];
  const weak = weakestLimits(limits, limitProbabilities).slice(0, 2);
  const which = weak.map(({ name, probability }) => `${name} in ${inDraws(probability)}`).join(', ');
  return [
    {
      code: 'passes-on-paper',
      severity: 'odd',
      field: null,
      message: `Passes on paper: with the figures as they stand every limit holds, but only in ${inDraws(passProbability)} of the draws about them${which === '' ? '' : ` (${which})`}.`,
    },
  ];
}

/** Limits that hold in few draws, the weakest first. */
export function weakestLimits(
  limits: readonly LimitOutcome[],
  probabilities: readonly (number | null)[],
): { name: string; probability: number }[] {
  return limits
    .map(({ criterion }, index) => ({
      criterion,
      name: criterionWords(criterion),
      probability: probabilities[index] ?? 1,
    }))
    .filter(({ criterion, probability }) => isDrawn(criterion) && probability < 1)
    .sort((a, b) => a.probability - b.probability);
}
