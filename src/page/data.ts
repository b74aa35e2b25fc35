import { tier } from '../assess/choosing/drawn-worths.js';
import type { Choice } from '../assess/choosing/rank-again.js';

/** What the page carries for its script, as JSON. Long columns are bytes in base 64. */
export interface PageData {
  drawCount: number;
  /** Own weight of each criterion. */
  criteria: { id: string; weightScore: number }[];
  limits: { id: string; label: string }[];
  /** Units of weight of each named step. */
  steps: Record<string, number>;
  candidates: PageCandidate[];
  /** Passing in a smaller share of the draws is passing on paper. */
  onPaperFraction: number;
  /** Short texts; `{candidate}` and the like are filled in. */
  words: Record<string, string>;
}

/** One candidate; see `ChoiceCandidate` for what the figures are. */
export interface PageCandidate {
  id: string;
  label: string;
  rank: number;
  /** Names of limits that it fails and that cannot be dropped. */
  alwaysFails: string[];
  worthScores: number[];
  passes: boolean | null;
  limitPasses: (boolean | null)[];
  /** 16 bits each, low byte first, [draw × criterion]. */
  worths: string;
  always: PackedTiers;
  limits: PackedTiers[];
}

/** What limits come to in each draw: a bit says that they fail; where none is set they hold, or are not judged. */
export interface PackedTiers {
  isOpen: boolean;
  fails: string;
}

/** Worth 1 in 16 bits. */
export const fullWorth = 65535;

/** Tiers of a draw as the ranking counts them, for whoever packs them. */
export const packedTier = tier;

/** The candidates as the ranking wants them. */
export function choiceFrom(data: PageData): Choice {
  const { drawCount, criteria, limits } = data;
  return {
    drawCount,
    criteria,
    limits: limits.map(({ id }) => id),
    candidates: data.candidates.map(({ id, worthScores, passes, limitPasses, worths, always, ...own }) => ({
      ...{ id, worthScores, passes, limitPasses },
      drawnWorthScores: worthsFrom(worths),
      tiers: tiersFrom(always, drawCount),
      limitTiers: own.limits.map((packed) => tiersFrom(packed, drawCount)),
    })),
  };
}

function worthsFrom(text: string): Float64Array {
  const bytes = bytesFrom(text);
  const worths = new Float64Array(bytes.length / 2);
  for (let at = 0; at < worths.length; at++)
    worths[at] = (bytes[2 * at]! + 256 * bytes[2 * at + 1]!) / fullWorth;
  return worths;
}

/** Tiers as the ranking counts them. */
function tiersFrom({ isOpen, fails }: PackedTiers, drawCount: number): Uint8Array {
  const bytes = bytesFrom(fails);
  const tiers = new Uint8Array(drawCount);
  for (let draw = 0; draw < drawCount; draw++) {
    const isFailing = ((bytes[draw >> 3]! >> (draw & 7)) & 1) === 1;
    tiers[draw] = isFailing ? tier.fails : isOpen ? tier.notJudged : tier.passes;
  }
  return tiers;
}

function bytesFrom(text: string): Uint8Array {
  return Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
}
