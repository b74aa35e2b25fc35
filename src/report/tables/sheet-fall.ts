import type { LeadState } from '../../assess/safety/fall-figures.js';
import type { SafetyFigures } from '../../assess/safety/safety-figures.js';
import type { StopName } from '../../simulate/outcome.js';
import type { ReportContext } from '../context.js';
import type { Values } from '../template/fill-template.js';
import { probability } from '../words/bands.js';
import { duration, withReading } from '../words/figures.js';

/** What a cut of the power does, as the safety sheet says it: the answer, both states of the leads, the grip. */
export function fallValues(context: ReportContext, { powerCut, isCautious, push }: SafetyFigures): Values {
  const { phrases } = context;
  const { answer, fallProbability, decides, towards } = powerCut;
  const isUpwards = towards === 'upper';
  const figures = fallWords(context, powerCut);
  const suffix = isCautious ? '' : '-nominal';
  const falls = answer === 'falls' || answer === 'may-fall';
  const keepsGrip = !falls && push.unpoweredPushDownN === null;
  const own = decides === 'shorted' ? powerCut.shorted : powerCut.open;
  return {
    falls: answer === 'falls' && !isUpwards,
    falls_up: answer === 'falls' && isUpwards,
    may_fall: answer === 'may-fall' && !isUpwards,
    may_fall_up: answer === 'may-fall' && isUpwards,
    sinks: answer === 'sinks' && !isUpwards,
    sinks_up: answer === 'sinks' && isUpwards,
    stays: answer === 'stays',
    goes: goesWord(context, towards),
    fall: falls ? phrases(`sheet-fall${suffix}`, figures) : '',
    fall_share: probability(fallProbability),
    else_does: own.does === 'sinks' ? phrases('sheet-gives-way') : phrases('sheet-holds-nominally'),
    holds: phrases(staysPhrase(powerCut)),
    leads: leadsWords(context, powerCut),
    grip: keepsGrip ? phrases('sheet-grip') : '',
    without_power: phrases(isUpwards && answer !== 'stays' ? `sheet-${answer}-up` : `sheet-${answer}`),
    without_power_note: fallNote(context, powerCut, `sheet-fall-note${suffix}`),
  };
}

/** Why it stays: gears that lock, or the friction of the motor behind them; shaken too, or only while nobody does. */
function staysPhrase({ locking, staysWhenShaken }: SafetyFigures['powerCut']): string {
  if (locking === 'holds-when-shaken') return 'sheet-stays-locked';
  if (staysWhenShaken) return 'sheet-stays-by-friction';
  return locking === 'holds-at-rest' ? 'sheet-stays-locked-at-rest' : 'sheet-stays-at-rest';
}

/** Both states of the motor leads in one sentence. */
function leadsWords(context: ReportContext, powerCut: SafetyFigures['powerCut']): string {
  const { phrases } = context;
  const { open, shorted, decides, towards } = powerCut;
  const states = { open: leadWords(context, towards, open), shorted: leadWords(context, towards, shorted) };
  return states.open === states.shorted
    ? phrases('sheet-leads-alike', states)
    : phrases('sheet-leads', { ...states, decides: phrases(`sheet-lead-state-${decides}`) });
}

function fallNote(context: ReportContext, powerCut: SafetyFigures['powerCut'], phrase: string): string {
  const { phrases } = context;
  const { answer, fallProbability } = powerCut;
  if (answer === 'stays') return phrases(staysPhrase(powerCut));
  if (answer === 'sinks') return phrases('sheet-sinks-note');
  const note = phrases(phrase, fallWords(context, powerCut));
  if (answer === 'falls') return note;
  return phrases('sheet-fall-share', { note, share: probability(fallProbability) });
}

function fallWords(
  { units }: ReportContext,
  { fallS, tipSpeedMPerS, energyJ, towards }: SafetyFigures['powerCut'],
): Record<string, string> {
  return {
    stop: towards,
    time: duration(fallS),
    speed: withReading(tipSpeedMPerS, units.speed),
    energy: withReading(energyJ, 'joulesInShort'),
  };
}

/** What it does on its way to a stop: `falls`, `swings`, `rises`. */
function goesWord({ phrases, assessment }: ReportContext, towards: StopName): string {
  return phrases(towards === 'upper' ? `sheet-goes-up-${assessment.study.feature.kind}` : 'sheet-goes-down');
}

function leadWords(context: ReportContext, towards: StopName, { does, fallS }: LeadState): string {
  const { phrases } = context;
  return does === 'falls'
    ? phrases('sheet-lead-falls', { goes: goesWord(context, towards), time: duration(fallS) })
    : phrases(`sheet-lead-${does}`);
}
