import { outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { NominalOutcome } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import { quantileOf } from '../certainty/bands.js';
import { packsNeeded } from './plan-day.js';

/** What the draws say of a day. */
export interface DrawnDay {
  /** Runtime that nine draws in ten reach. */
  runtimeP10S: number | null;
  /** Share of draws in which the packs that are carried do the day. */
  doneProbability: number;
  /** Fewest packs that do the day in nine draws in ten; null when no number does. */
  packsSureCount: number | null;
}

/** Draws for which the day is planned anew. */
const plannedDraws = 256;

/** Share of draws in which a day is done from which it is promised. */
export const surelyDone = 0.9;

type Lasting = Pick<NominalOutcome, 'runtimeS' | 'warningS' | 'meanPackCurrentA'>;

/**
 * Plans the day with the runtime, the warning and the current of each draw.
 * @param columns draws of the candidate, one column per outcome
 * @param drawnAbout the nominal figures that the draws are about, where they are not those of the outcome: a change
 *   moves every draw as it moves them
 * @returns null where the show cannot be played by the figures that the draws are about
 */
export function drawnDay(
  study: Study,
  candidate: Candidate,
  outcome: NominalOutcome,
  columns: readonly Float64Array[],
  drawnAbout: Lasting = outcome,
): DrawnDay | null {
  if (drawnAbout.runtimeS === null || outcome.runtimeS === null) return null;
  const drawCount = Math.min(plannedDraws, columns[0]!.length);
  const lasting = Array.from({ length: drawCount }, (_, draw) => inDraw(columns, draw, outcome, drawnAbout));
  const needed = lasting
    .map((drawn) => packsNeeded(study, candidate, { ...outcome, ...drawn }) ?? Number.POSITIVE_INFINITY)
    .sort((a, b) => a - b);
  const done = needed.filter((count) => count <= study.packsCarriedCount).length;
  const sure = needed[Math.ceil(surelyDone * drawCount) - 1]!;
  const runtimes = columns[outcomeIndex.runtimeS]!.map((timeS) => (Number.isNaN(timeS) ? 0 : timeS)).sort();
  return {
    runtimeP10S: (quantileOf(runtimes, 1 - surelyDone) * outcome.runtimeS) / drawnAbout.runtimeS,
    doneProbability: done / drawCount,
    packsSureCount: Number.isFinite(sure) ? sure : null,
  };
}

function inDraw(
  columns: readonly Float64Array[],
  draw: number,
  outcome: Lasting,
  drawnAbout: Lasting,
): Lasting {
  const at = (name: keyof Lasting): number | null => {
    const value = columns[outcomeIndex[name]]![draw]!;
    const [own, about] = [outcome[name], drawnAbout[name]];
    if (Number.isNaN(value)) return null;
    return own === null || about === null ? value : (value * own) / about;
  };
  return { runtimeS: at('runtimeS'), warningS: at('warningS'), meanPackCurrentA: at('meanPackCurrentA') };
}
