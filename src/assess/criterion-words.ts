/** A criterion as sentences name it: `body_mass` → body mass. */
export const criterionWords = (criterion: string): string => criterion.replaceAll('_', ' ');
