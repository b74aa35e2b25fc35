import { fileRules } from './file-rules.js';
import { fontRules } from './font-rules.js';
import { metadataRules } from './metadata-rules.js';
import { openPdf } from './open-pdf.js';
import { pageRules } from './page-rules.js';
import type { Rule } from './rule.js';
import { structureRules } from './structure-rules.js';

/**
 * What ISO 19005-3 (PDF/A-3, level A) and ISO 14289-1 (tagging) ask of a file such as ours. Made from memory of the
 * published clauses, as no validator of this part comes as a package: it is a check of our own, not a certificate.
 */
export const rules: readonly Rule[] = [
  ...fileRules,
  ...metadataRules,
  ...pageRules,
  ...fontRules,
  ...structureRules,
];

/** Everything that is wrong with a PDF, by rule; a rule that holds is not named. */
export async function faultsOf(bytes: Uint8Array): Promise<Record<string, string[]>> {
  const pdf = await openPdf(bytes);
  const found = rules.map(({ id, faults }) => [id, faults(pdf).slice(0, 5)] as const);
  return Object.fromEntries(found.filter(([, faults]) => faults.length > 0));
}
