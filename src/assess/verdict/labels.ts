import type { CandidateAssessment } from '../assessment.js';

/** What sentences call a candidate: its label, with the id where two carry the same one. */
export function labelsOf(
  ranked: readonly Pick<CandidateAssessment, 'id' | 'label'>[],
): (id: string) => string {
  const times = (label: string) => ranked.filter((candidate) => candidate.label === label).length;
  return (id) => {
    const label = ranked.find((candidate) => candidate.id === id)?.label ?? id;
    return times(label) > 1 ? `${label} (${id})` : label;
  };
}

/** A field as sentences name it: `hold_current` → hold current, `feature.mass` → feature mass. */
export const fieldWords = (field: string): string =>
  field.replaceAll(/[._]/g, ' ').replaceAll('no load', 'no-load');

/** A sentence's first letter made small, for use inside another. */
export const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** The first letter made large. */
export const large = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
