import type { MeasurementAdvice } from '../assessment.js';
import { inDraws } from '../certainty/sureness.js';
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
        changedProbability: worth.changedProbability,
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

/** How often the first is ahead at both ends of a value; where that hardly differs, only by how much it is. */
function leadWords(first: string, second: string, ends: Measurable['ends']): string {
  const ahead = ends.map(({ aheadProbability }) => aheadProbability);
  const [few, many] = [Math.min(...ahead), Math.max(...ahead)];
  return many - few >= visiblePass
    ? `${first} is ahead of ${second} in ${inDraws(many)} of the draws at one end of it and in ${inDraws(few)} at the other`
    : `it moves by how much ${first} is ahead of ${second}, hardly ever whether it is`;
}

/** What knowing it would do, in words; empty when nothing that shows. */
function whyMeasure(
  { worth, leadSwingScore, passSwings, ends }: Measurable,
  label: (id: string) => string,
  pair: readonly string[],
): string {
  const parts: string[] = [];
  if (worth.worthScore >= visibleWorth)
    parts.push(`knowing it would change the choice in ${inDraws(worth.changedProbability)} of the draws`);
  for (const { candidate, low, high } of passSwings) {
    if (Math.abs(high - low) < visiblePass) continue;
    const [few, many] = [Math.min(low, high), Math.max(low, high)];
    parts.push(
      `${label(candidate)} passes every limit in ${inDraws(many)} of the draws at one end of it and in ${inDraws(few)} at the other`,
    );
  }
  if (Math.abs(leadSwingScore) >= visibleScore) {
    const [first, second] = pair;
    if (second !== undefined) parts.push(leadWords(label(first!), label(second), ends));
    else parts.push(`it moves how good ${label(first!)} is`);
  }
  return parts.join('; ');
}
