import { cueFidelity } from '../../simulate/loop-figures.js';
import type { CandidateRun } from '../../simulate/outcome.js';
import type { Cue, Show } from '../../study/show.js';
import { percent, shortTime } from '../figures.js';
import { assumedBurden } from './burdens.js';
import type { LesserChangeId } from './lesser-change.js';
import { type ChangeKind, proposal } from './proposal.js';
import { cueName } from './words.js';

/** Holds and rests keep at least this share of their length. */
const leastStillFraction = 0.2;

/** All moves take a quarter longer. */
export const slowerMoves: ChangeKind = slower('slower-moves', 1.25);

/** All moves take half as long again. */
export const muchSlowerMoves: ChangeKind = slower('much-slower-moves', 1.5);

function slower(id: LesserChangeId, factor: number): ChangeKind {
  return {
    id,
    family: 'moves',
    propose(setup) {
      const { study, candidate } = setup;
      if (candidate.sheet.control === 'switched') {
        return { reason: 'a switched drive moves at its own speed, whatever the cue list says' };
      }
      const { show } = study;
      if (!show.loop.some(({ action }) => action === 'move')) return { reason: 'the loop has no move' };
      const loop = slowed(show.loop, factor);
      if (loop === null) return { reason: 'the holds are too short to make room for slower moves' };
      // What is played once may take longer, when its holds are too short.
      const leadIn = slowed(show.leadIn, factor) ?? show.leadIn.map((cue) => longer(cue, factor));
      return proposal({
        parts: [id],
        title: `Moves ${percent(factor - 1)} slower`,
        actions: [
          `Give every move ${plainFactor(factor)} times as long and take ${shortTime(lostS(show.loop, loop))} off the holds, so that the loop stays ${shortTime(lengthS(loop))}.`,
        ],
        settings: [
          { field: 'seconds of every move', value: factor, unit: '', shown: `× ${plainFactor(factor)}` },
        ],
        burden: assumedBurden(id),
        setup: { study: { ...study, show: { leadIn, loop } }, candidate },
        corrected: (run) => faithfulTo(show, run, factor),
        sideEffects: () => [shortest(show.loop, factor), 'Poses are held for less time.'],
      });
    },
  };
}

const plainFactor = (factor: number): string => String(factor);
const lengthS = (cues: readonly Cue[]): number => cues.reduce((sum, cue) => sum + cue.durationS, 0);
const timeOfS = (cues: readonly Cue[], actions: Cue['action'][]): number =>
  lengthS(cues.filter(({ action }) => actions.includes(action)));

/** Time that the moves of one list take from the holds and rests of the other. */
const lostS = (before: readonly Cue[], after: readonly Cue[]): number =>
  timeOfS(after, ['move']) - timeOfS(before, ['move']);

const longer = (cue: Cue, factor: number): Cue =>
  cue.action === 'move' ? { ...cue, durationS: factor * cue.durationS } : cue;

/**
 * The same cues with slower moves and as long as before: holds give the time, rests too where holds are not enough.
 * @returns null when neither are
 */
export function slowed(cues: readonly Cue[], factor: number): Cue[] | null {
  const neededS = (factor - 1) * timeOfS(cues, ['move']);
  for (const giving of [['hold'], ['hold', 'rest']] as Cue['action'][][]) {
    const stillS = timeOfS(cues, giving);
    const left = (stillS - neededS) / stillS;
    if (!(left >= leastStillFraction)) continue;
    return cues.map((cue) =>
      giving.includes(cue.action) ? { ...cue, durationS: left * cue.durationS } : longer(cue, factor),
    );
  }
  return null;
}

/** Fidelity is owed to the cue list as it was written, not to the slower one. */
function faithfulTo(written: Show, run: CandidateRun, factor: number): CandidateRun {
  const stretches = run.nominal.stretchRatios.map((stretch) => (stretch === null ? null : factor * stretch));
  const cueFidelityRatio = cueFidelity([...written.leadIn, ...written.loop], stretches);
  return { ...run, nominal: { ...run.nominal, stretchRatios: stretches, cueFidelityRatio } };
}

function shortest(cues: readonly Cue[], factor: number): string {
  const moves = cues.filter(({ action }) => action === 'move');
  const first = moves.reduce((a, b) => (b.durationS < a.durationS ? b : a));
  return `The shortest move, ${cueName(first)}, takes ${shortTime(factor * first.durationS)} instead of ${shortTime(first.durationS)}.`;
}
