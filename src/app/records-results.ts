import { objectFrom } from '../archive/json-text.js';
import { type RecordedAssessment, type RecordedCandidate, recordedCandidates } from './records-figures.js';
import type { SoundRecord } from './records-source.js';

/** What results.json of a record says, as far as it is needed; in rank order. */
export interface RecordedResults {
  leader: string | null;
  /** How many draws the bands of the candidates come from; 0 without. */
  draws: number;
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
  return {
    leader: typeof read.leader === 'string' ? read.leader : null,
    draws: typeof read.draws === 'number' ? read.draws : 0,
    candidates: recordedCandidates(read as unknown as RecordedAssessment),
  };
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
