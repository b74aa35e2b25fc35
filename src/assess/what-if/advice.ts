import type { MeasurementAdvice } from '../assessment.js';
import { inDraws } from '../certainty/sureness.js';
import { decimal } from '../figures.js';
import type { Measurable } from './measure-first.js';

/** A smaller change of the score does not show in two digits, and a smaller worth not in three. */
const visibleScore = 0.005;
const visibleWorth = 0.0005;

/** A change of the chance to pass that is worth a word. */
const visiblePass = 0.2;

/** What to measure, as advice: what is worth something, or moves the lead or a pass. */
export function adviceFrom(
  found: readonly Measurable[],
  study: { candidates: readonly { id: string }[] },
  label: (id: string) => string,
  pair: readonly string[],
): MeasurementAdvice[] {
  return found.flatMap((measurable): MeasurementAdvice[] => {
    const { knowable, worth, leadSwingScore } = measurable;
    if (!worth.measurable) return [];
    const why = whyMeasure(measurable, label, pair);
    if (why === '') return [];
    return [
      {
        field: knowable.field,
        candidate: study.candidates.some(({ id }) => id === knowable.owner) ? knowable.owner : null,
        label: knowable.label,
        why,
        instrument: worth.instrument,
        method: worth.method,
        minutes: worth.minutes,
        swing: Math.abs(leadSwingScore),
        worthScore: worth.worthScore,
        precision: worth.precision,
        goesInto: `${knowable.field} in ${fileOf(knowable.path)}`,
      },
    ];
  });
}

/** The file of the study that takes the answer. */
function fileOf(path: string): string {
  if (path.startsWith('measured.')) return 'measured.csv';
  if (/^(candidates|guess)\./.test(path) && !path.startsWith('guess.feature.')) return 'candidates.csv';
  if (path.startsWith('loads.')) return 'loads.csv';
  return /^packs?\./.test(path) && !path.startsWith('packTemp') ? 'packs.csv' : 'study.csv';
}

/** What knowing it would do, in words; empty when nothing that shows. */
function whyMeasure(
  { worth, leadSwingScore, passSwings }: Measurable,
  label: (id: string) => string,
  pair: readonly string[],
): string {
  const parts: string[] = [];
  if (worth.worthScore >= visibleWorth)
    parts.push(`knowing it is worth ${decimal(worth.worthScore, 3)} of the score`);
  for (const { candidate, low, high } of passSwings) {
    if (Math.abs(high - low) < visiblePass) continue;
    const [few, many] = [Math.min(low, high), Math.max(low, high)];
    parts.push(
      `${label(candidate)} passes every limit in ${inDraws(many)} of the draws at one end of it and in ${inDraws(few)} at the other`,
    );
  }
  if (Math.abs(leadSwingScore) >= visibleScore) {
    const [first, second] = pair;
    const lead = second === undefined ? label(first!) : `the lead of ${label(first!)} over ${label(second)}`;
    parts.push(`it moves ${lead} by ${decimal(Math.abs(leadSwingScore), 2)} of the score`);
  }
  return parts.join('; ');
}
