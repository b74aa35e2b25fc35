import type { SurenessWord } from '../certainty.js';
import { clearFrom, likelyFrom } from '../thresholds.js';

/** The word for a probability; what has none is open. */
export function surenessWord(probability: number | null): SurenessWord {
  if (probability === null) return 'open';
  return probability >= clearFrom ? 'clear' : probability >= likelyFrom ? 'likely' : 'open';
}

/** A probability as sentences write it: `94 %`, never a bare 0 or 100 unless it is one. */
export function inDraws(probability: number): string {
  if (probability > 0 && probability < 0.005) return 'under 1 %';
  if (probability < 1 && probability > 0.995) return 'over 99 %';
  const rounded = Math.round(probability * 100) / 100;
  // A figure must not read as if it had reached the next word.
  const short = [likelyFrom, clearFrom].some((from) => rounded === from && probability < from);
  return `${short ? 'just under ' : ''}${Math.round(probability * 100)} %`;
}
