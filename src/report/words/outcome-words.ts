import type { CandidateAssessment } from '../../assess/assessment.js';
import { limitName } from '../../assess/criterion-words.js';
import { listed } from '../../assess/figures.js';
import type { EndReason, LockingClass, NominalOutcome } from '../../simulate/outcome.js';
import type { Provenance } from '../../study/provenance.js';
import { counted, joined } from './figures.js';

/** What ended the run on one pack. */
export const endReasonWords: Record<EndReason, string> = {
  'cut-off': 'cut-off reached',
  'cell-floor': 'cell floor reached',
  reserve: 'reserve reached',
  controller: 'controller resets',
  regulator: 'regulator drops out',
  collapse: 'voltage collapses',
};

/** Whether the gears alone hold. What the drive does can differ: the friction of its motor stands behind them. */
export const lockingWords: Record<LockingClass, string> = {
  'holds-when-shaken': 'lock, even shaken',
  'holds-at-rest': 'lock at rest only',
  'does-not-hold': 'do not lock',
};

/** Which figure of the hold current the result uses. */
export const holdCurrentWords: Record<NominalOutcome['holdCurrentUsed'], string> = {
  'pulse-model': 'pulse model',
  measured: 'measured',
  'direct-current': 'direct current',
  unpowered: 'power off',
};

/** Limits of one candidate in few words: `all 6 pass`, `fails torque margin, runtime`, `noise not judged`. */
export function limitsSummary(candidate: CandidateAssessment): {
  text: string;
  tone: 'good' | 'bad' | 'muted';
} {
  const names = (wanted: boolean | null): string[] =>
    candidate.limits.filter((limit) => limit.passes === wanted).map((limit) => limitName(limit.criterion));
  const [failed, open] = [names(false), names(null)];
  if (failed.length > 0) return { text: `✗ fails: ${failed.join(', ')}`, tone: 'bad' };
  if (open.length > 0) return { text: `not judged: ${listed(open)}`, tone: 'muted' };
  if (candidate.limits.length === 0) return { text: 'no limits set', tone: 'muted' };
  return { text: `✓ passes ${counted(candidate.limits.length, 'limit')}`, tone: 'good' };
}

/** Why a candidate has no runtime: its first failure in words, or what could not be judged. */
export function noRuntimeReason(candidate: CandidateAssessment): string {
  const failed = candidate.limits.filter((limit) => limit.passes === false);
  const reason = failed.find((limit) => limit.reason !== undefined)?.reason;
  if (reason !== undefined) return reason;
  return failed.length > 0 ? `fails: ${limitName(failed[0]!.criterion)}` : 'could not be judged';
}

const moneyFields = ['price', 'extra_cost', 'hour_price', 'cost'];

/** What was written for a sum of money, with the currency that the study counts in; anything else as it stands. */
export function withCurrency(field: string, text: string, currency: string): string {
  const isMoney = moneyFields.includes(field) && currency !== '' && /^[\d.,]+$/.test(text);
  return isMoney ? `${text}${joined}${currency}` : text;
}

/** Where a listing rates a drive for a further voltage, and for which of them. */
const furtherRating = /^candidates\..+\.otherVoltages\.\d+\./;

/**
 * What an input is called among those of its candidate: a figure that is listed for a further voltage names it, so
 * that it does not read as a second figure for the same.
 */
export function inputName({ field, path }: Provenance, all: readonly Provenance[]): string {
  const words = fieldWords(
    field.startsWith(`${path.split('.')[0]}.`) ? field.replace(/^[a-z]+\./, '') : field,
  );
  const rating = furtherRating.exec(path)?.[0];
  if (rating === undefined) return words;
  if (field === 'rated_voltage') return `further ${words}`;
  const voltage = all.find((entry) => entry.path === `${rating}ratedVoltageV`)?.shown ?? '';
  return voltage === '' ? words : `${words} at ${voltage.replaceAll(' ', joined)}`;
}

/** A field name as words: `stall_torque` → `stall torque`. */
export function fieldWords(field: string): string {
  return field.replace(/^[a-z]+\./, (owner) => `${owner.slice(0, -1)} `).replaceAll('_', ' ');
}
