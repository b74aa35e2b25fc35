import type { Confidence } from '../../assess/certainty.js';
import { capitalised, stopped } from './figures.js';

/**
 * How sure an answer is, the word first: `Likely: it leads in 83 % of the draws.` The sentence may begin with a
 * user's own name, which keeps its case.
 */
export function confidenceWords({ probability, word, sentence: why }: Confidence): string {
  const said = stopped(why);
  const first = capitalised(word);
  return probability === null || said.startsWith(first) ? said : `${first}: ${said}`;
}
