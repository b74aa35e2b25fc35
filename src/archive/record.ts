import { jsonText, objectFrom } from './json-text.js';

/** Version of decision.json: new keys may come, keys keep their meaning. */
export const recordFormat = 'holdwright-record/1';

/** What can be decided about a candidate. */
const decisions = ['adopt', 'keep', 'postpone', 'reject'] as const;
/** What became of the candidate. */
export type Decision = (typeof decisions)[number];

/** A file of the study as it was: the name it had, and where in the record it is kept. */
export interface RecordedInput {
  name: string;
  /** Path below the payload folder; letters, digits, `.`, `_`, `-` and `/` only. */
  file: string;
  sha256: string;
}

/** A decision as it is filed. Texts are verbatim, as their writers gave them. */
export interface DecisionRecord {
  format: typeof recordFormat;
  id: string;
  question: string;
  project: string;
  decision: Decision;
  choice: { id: string; label: string };
  /** The reason in the maker's words. */
  because: string;
  by: string;
  /** ISO date of the decision. */
  date: string;
  /** ISO date when to look again; null when none was set. */
  lookAgain: string | null;
  /** Id of the earlier record that this one replaces. */
  supersedes: string | null;
  /** What the program said at that time, and how sure it was; a sentence each. */
  verdict: string;
  confidence: string;
  /** First in rank among those that pass; null when none does. */
  leader: string | null;
  baseline: string | null;
  version: string;
  modelVersion: string;
  inputHash: string;
  inputs: RecordedInput[];
  /** Table of what was taken where a cell was blank; null when it was the one that ships. */
  assumptions: RecordedInput | null;
}

/** A decision without what filing it adds. */
export type UnfiledDecision = Omit<DecisionRecord, 'format' | 'id'>;

/** Text of decision.json. */
export function decisionText(record: DecisionRecord): string {
  return jsonText(record);
}

/** Reads decision.json; null when anything in it is not as it should be. */
export function readDecision(text: string): DecisionRecord | null {
  const read = objectFrom(text);
  if (read === null || read.format !== recordFormat) return null;
  const sound =
    textKeys.every((key) => typeof read[key] === 'string') &&
    textOrNullKeys.every((key) => read[key] === null || typeof read[key] === 'string') &&
    isDecision(read.decision) &&
    isChoice(read.choice) &&
    Array.isArray(read.inputs) &&
    read.inputs.every(isInput) &&
    (read.assumptions === null || isInput(read.assumptions));
  return sound ? (read as unknown as DecisionRecord) : null;
}

const textKeys = [
  'id',
  'question',
  'project',
  'because',
  'by',
  'date',
  'verdict',
  'confidence',
  'version',
  'modelVersion',
  'inputHash',
] as const;
const textOrNullKeys = ['lookAgain', 'supersedes', 'leader', 'baseline'] as const;

/** Whether a word is one of the decisions. */
export function isDecision(word: unknown): word is Decision {
  return decisions.some((decision) => decision === word);
}

function isChoice(value: unknown): boolean {
  const { id, label } = (value ?? {}) as Record<string, unknown>;
  return typeof id === 'string' && typeof label === 'string';
}

function isInput(value: unknown): boolean {
  const { name, file, sha256 } = (value ?? {}) as Record<string, unknown>;
  return typeof name === 'string' && typeof file === 'string' && typeof sha256 === 'string';
}

/** Longest part of an id that comes from a candidate. */
const longestSlug = 32;

/**
 * The id of a record: date, decision and candidate, as people file things; `-2` and so on where it is taken.
 * @param taken ids in any case
 */
export function recordId(
  { date, decision, choice }: Pick<UnfiledDecision, 'date' | 'decision' | 'choice'>,
  taken: readonly string[],
): string {
  const slug = plainLetters(choice.id)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, longestSlug);
  const id = `${date}-${decision}-${slug === '' ? 'candidate' : slug}`;
  const used = new Set(taken.map((name) => name.toLowerCase()));
  let free = id;
  for (let count = 2; used.has(free); count++) free = `${id}-${count}`;
  return free;
}

/** Letters without their accents. */
export function plainLetters(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '');
}

/** Whether a name can be that of a record: it is a folder's name and nothing more. */
export function isRecordId(name: string): boolean {
  return /^[a-z0-9][a-z0-9-]{0,99}$/.test(name);
}
