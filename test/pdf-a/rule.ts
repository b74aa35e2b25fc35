import type { OpenPdf } from './open-pdf.js';

/** One demand of a standard. The clauses are given from memory, the demands in our own words. */
export interface Rule {
  id: string;
  /** `19005-3, 6.1.2` */
  clause: string;
  demands: string;
  /** What is wrong, place first; empty when the demand is met. */
  faults(pdf: OpenPdf): string[];
}

/** A fault when something does not hold. */
export const unless = (holds: boolean, fault: string): string[] => (holds ? [] : [fault]);
