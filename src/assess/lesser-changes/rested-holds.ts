import type { CandidateRun } from '../../simulate/outcome.js';
import type { Cue, Show } from '../../study/show.js';
import type { Study } from '../../study/study.js';
import { driveRestCurrentA } from '../day/rest-current.js';
import type { Setup } from './proposal.js';

/** Positions closer than this are the same pose: a tenth of a degree, a tenth of a millimetre. */
const samePose = { hinge: Math.PI / 1800, slide: 1e-4 };

/** Whether two positions of a study's feature are the same. */
export const isSamePlace = (study: Study, a: number, b: number): boolean =>
  Math.abs(a - b) <= samePose[study.feature.kind];

/** A show some of whose holds have become rests. */
export interface RestedShow {
  show: Show;
  /** The cues that rest now, of the loop and before it. */
  rested: Cue[];
  /** Share of the loop's hold time that is still held. */
  heldFraction: number;
}

/** Let the holds at some positions rest on whatever bears the load there. */
export function withRests(show: Show, bears: (position: number) => boolean): RestedShow {
  const rested: Cue[] = [];
  const rest = (cue: Cue): Cue => {
    if (cue.action !== 'hold' || !bears(cue.fromPosition)) return cue;
    rested.push(cue);
    return { ...cue, action: 'rest' };
  };
  const changed = { leadIn: show.leadIn.map(rest), loop: show.loop.map(rest) };
  const before = holdTimeS(show.loop);
  return { show: changed, rested, heldFraction: before > 0 ? holdTimeS(changed.loop) / before : 1 };
}

/** Time that a cue list holds. */
export const holdTimeS = (cues: readonly Cue[]): number =>
  cues.reduce((sum, cue) => sum + (cue.action === 'hold' ? cue.durationS : 0), 0);

/**
 * Hold figures over the time that was held before the change: what rests now counts with the resting drive's draw.
 * The simulation averages over the remaining holds only, which would make a rest at a light pose look like a loss.
 */
export function overFormerHolds(run: CandidateRun, heldFraction: number, setup: Setup): CandidateRun {
  const restA = driveRestCurrentA(setup.study, setup.candidate);
  const { nominal } = run;
  const holdPackCurrentA = heldFraction * nominal.holdPackCurrentA + (1 - heldFraction) * restA;
  const { pack } = setup.study;
  const holdPowerW = holdPackCurrentA * pack.seriesCount * pack.chemistry.nominalVoltageV;
  return { ...run, nominal: { ...nominal, holdPackCurrentA, holdPowerW } };
}
