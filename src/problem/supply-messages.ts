import { errorOf, type Trouble } from './trouble.js';

/** A cut-off that no cell of the chemistry reaches from above. */
export function cutOffAboveFull(cutOff: string, full: string): Trouble {
  return errorOf(
    'cut-off-above-full',
    cutOff,
    `less than ${full}`,
    `the cut-off of ${cutOff} is not below the full cell's ${full}`,
    'write the voltage of one cell, not of the pack',
  );
}

/** A warning that comes after the end. */
export function warningBelowCutOff(warning: string, cutOff: string): Trouble {
  return errorOf(
    'warning-below-cut-off',
    warning,
    `more than ${cutOff}`,
    `the warning at ${warning} comes after the cut-off at ${cutOff}`,
    'put the warning above the cut-off',
  );
}
