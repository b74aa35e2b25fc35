import type { Caution, CautionSeverity } from '../assessment.js';
import type { Judged } from '../criterion-values.js';

/** The words of one caution: the figure that raised it, what it means, what to do. */
export interface CautionWords {
  figure: string;
  text: string;
  action: string;
}

/** A caution about one candidate. */
export function about(judged: Judged, code: string, severity: CautionSeverity, words: CautionWords): Caution {
  return { code, severity, candidate: judged.candidate.id, ...words };
}

/** A caution about the whole feature, or one that always stands. */
export function general(code: string, severity: CautionSeverity, words: CautionWords): Caution {
  return { code, severity, candidate: null, ...words };
}
