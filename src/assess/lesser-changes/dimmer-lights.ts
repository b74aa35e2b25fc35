import type { Cue } from '../../study/show.js';
import { listed, percent } from '../figures.js';
import { assumedBurden } from './burdens.js';
import { type ChangeKind, proposal } from './proposal.js';

/** Share of today's light that is left. */
const leftFraction = 0.7;

/** All light levels of the cue list at 70 %. */
export const dimmerLights: ChangeKind = {
  id: 'dimmer-lights',
  family: 'lights',
  propose({ study, candidate }) {
    const { show } = study;
    const lamps = study.loads.filter(({ drawnWhen, powerW }) => drawnWhen === 'lights' && powerW > 0);
    const lit = [...show.leadIn, ...show.loop].some(({ lightsFraction }) => lightsFraction > 0);
    if (lamps.length === 0 || !lit) return { reason: 'no lights follow the cue list' };
    const dim = (cue: Cue): Cue => ({ ...cue, lightsFraction: leftFraction * cue.lightsFraction });
    const dimmed = { leadIn: show.leadIn.map(dim), loop: show.loop.map(dim) };
    return proposal({
      parts: ['dimmer-lights'],
      title: `Lights at ${percent(leftFraction)}`,
      actions: [
        `Set every light level of the cue list to ${percent(leftFraction)} of what it is (${listed(lamps.map(({ label }) => label))}).`,
      ],
      settings: [{ field: 'lights of every cue', value: leftFraction, unit: '', shown: `× ${leftFraction}` }],
      burden: assumedBurden('dimmer-lights'),
      setup: { study: { ...study, show: dimmed }, candidate },
      sideEffects: () => [
        'In the dark the eye hardly misses it; in daylight it does. Look at it before the day.',
      ],
    });
  },
};
