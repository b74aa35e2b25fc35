import type { Study } from '../../study/study.js';
import { fieldWords, labelsOf } from '../verdict/labels.js';

/** An input as charts and tables name it: `stall torque of Servo as built`, `power of lamps`. */
export function labelledField(study: Study, field: string, owner: string | null): string {
  const words = fieldWords(field);
  if (owner === null) return words;
  const pack = study.packs.find(({ id }) => id === owner);
  const named = study.candidates.some(({ id }) => id === owner)
    ? labelsOf(study.candidates)(owner)
    : (pack?.label ?? owner);
  return `${words} of ${named}`;
}
