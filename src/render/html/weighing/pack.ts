import { fullWorth, type PackedTiers, type PageData, packedTier } from '../../../page/data.js';
import type { Weighing } from '../../../report/weighing.js';

/** The draws and words of a page as its script reads them; worths are rounded to 16 bits, all else is exact. */
export function pageDataOf({
  choice,
  limits,
  candidates,
  steps,
  words,
  onPaperFraction,
}: Weighing): PageData {
  return {
    drawCount: choice.drawCount,
    criteria: choice.criteria.map(({ id, weightScore }) => ({ id, weightScore })),
    limits: limits.map(({ id, label }) => ({ id, label })),
    steps: Object.fromEntries(steps.map(({ id, weightScore }) => [id, weightScore])),
    onPaperFraction,
    words,
    candidates: candidates.map(({ id, label, alwaysFails }, index) => {
      const own = choice.candidates.find((candidate) => candidate.id === id)!;
      return {
        ...{ id, label, alwaysFails, rank: index + 1 },
        ...{ worthScores: own.worthScores, passes: own.passes, limitPasses: own.limitPasses },
        worths: packedWorths(own.drawnWorthScores),
        always: packedTiers(own.tiers),
        limits: own.limitTiers.map(packedTiers),
      };
    }),
  };
}

/** JSON that is nothing but data wherever it stands in a page. */
export function jsonForPage(data: PageData): string {
  return JSON.stringify(data).replace(/[<>&\u2028\u2029]/g, (sign) => {
    return `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;
  });
}

function packedWorths(worths: Float64Array): string {
  const bytes = new Uint8Array(2 * worths.length);
  const view = new DataView(bytes.buffer);
  worths.forEach((worth, at) => {
    view.setUint16(2 * at, Math.round(worth * fullWorth), true);
  });
  return Buffer.from(bytes).toString('base64');
}

function packedTiers(tiers: Uint8Array): PackedTiers {
  const bytes = new Uint8Array(Math.ceil(tiers.length / 8));
  tiers.forEach((own, draw) => {
    if (own === packedTier.fails) bytes[draw >> 3]! |= 1 << (draw & 7);
  });
  const isOpen = tiers.includes(packedTier.notJudged);
  return { isOpen, fails: Buffer.from(bytes).toString('base64') };
}
