import type { Confidence } from '../../assess/certainty.js';
import { capitalised, sentence } from './figures.js';

/** How sure an answer is, the word first: `Likely: it leads in 83 % of the draws.` */
export function confidenceWords({ probability, word, sentence: why }: Confidence): string {
  const said = sentence(why);
  const first = capitalised(word);
  return probability === null || said.startsWith(first) ? said : `${first}: ${said}`;
}
