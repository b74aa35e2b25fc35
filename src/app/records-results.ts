import { objectFrom } from '../archive/json-text.js';
import type { RecordedCandidate } from './records-figures.js';
import type { SoundRecord } from './records-source.js';

/** What results.json of a record says, as far as it is needed; in rank order. */
export interface RecordedResults {
  leader: string | null;
  candidates: RecordedCandidate[];
}

/** Name of the results in a record. */
const resultsFile = 'results.json';

/** The results as they were filed; null when the record has none that can be read. */
export function recordedResults({ stored }: SoundRecord): RecordedResults | null {
  const bytes = stored.payload.get(resultsFile);
  return bytes === undefined ? null : resultsFrom(new TextDecoder().decode(bytes));
}

/** The same from the text of a results.json. */
export function resultsFrom(text: string): RecordedResults | null {
  const read = objectFrom(text);
  if (read === null || !Array.isArray(read.candidates) || !read.candidates.every(isCandidate)) return null;
  const candidates = [...(read.candidates as RecordedCandidate[])].sort((a, b) => a.rank - b.rank);
  return { leader: typeof read.leader === 'string' ? read.leader : null, candidates };
}

function isCandidate(value: unknown): boolean {
  const { id, label, rank, passes, score, nominal } = (value ?? {}) as Record<string, unknown>;
  return (
    [id, label].every((text) => typeof text === 'string') &&
    [rank, score].every((figure) => typeof figure === 'number') &&
    (passes === null || typeof passes === 'boolean') &&
    typeof nominal === 'object' &&
    nominal !== null
  );
}
