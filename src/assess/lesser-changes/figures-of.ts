import { decidingPowerCut } from '../../simulate/outcome.js';
import type { ChangeFigures, ChangeGain } from './lesser-change.js';
import type { Tried } from './proposal.js';

/**
 * The figures a change is judged by.
 * @param packsInTurnCount packs that are used one after another
 * @param score of the drive on the user's own weights
 */
export function figuresOf({ run }: Tried, packsInTurnCount: number, score: number): ChangeFigures {
  const { nominal } = run;
  const { runtimeS } = nominal;
  return {
    runtimeS,
    playingTimeS: runtimeS === null ? null : packsInTurnCount * runtimeS,
    holdPowerW: nominal.holdPowerW,
    meanPackCurrentA: nominal.meanPackCurrentA,
    peakPackCurrentA: nominal.peakPackCurrentA,
    torqueMarginRatio: nominal.torqueMarginRatio,
    holdEffortRatio: nominal.holdEffortRatio,
    windingTemperatureK: nominal.windingTemperatureK,
    cueFidelityRatio: nominal.cueFidelityRatio,
    bodyMassKg: nominal.bodyMassKg,
    fallEnergyJ: decidingPowerCut(nominal).impactEnergyJ ?? 0,
    score,
  };
}

/** What is better after than before; a show that could not be played before ran for no time at all. */
export function gainBetween(before: ChangeFigures, after: ChangeFigures): ChangeGain {
  const more = (figure: keyof ChangeFigures): number | null => {
    const [from, to] = [before[figure], after[figure]];
    return from === null || to === null ? null : difference(from, to);
  };
  const less = (figure: keyof ChangeFigures): number | null => {
    const change = more(figure);
    return change === null ? null : 0 - change;
  };
  const time = (figure: 'runtimeS' | 'playingTimeS'): number | null =>
    after[figure] === null ? null : difference(before[figure] ?? 0, after[figure]);
  return {
    runtimeS: time('runtimeS'),
    playingTimeS: time('playingTimeS'),
    holdPowerW: difference(after.holdPowerW, before.holdPowerW),
    meanPackCurrentA: less('meanPackCurrentA'),
    torqueMarginRatio: more('torqueMarginRatio'),
    holdEffortRatio: less('holdEffortRatio'),
    windingTemperatureK: less('windingTemperatureK'),
    score: difference(before.score, after.score),
  };
}

/** What is left of a difference when rounding is taken out. */
function difference(from: number, to: number): number {
  const change = to - from;
  return Math.abs(change) > 1e-12 * Math.abs(to) ? change : 0;
}

/** A change lighter than this weighs nothing. */
const leastMassKg = 1e-6;

/** A gain scaled to 100 g of what the change adds or takes away; null for a change that weighs nothing. */
export function perHundredGrams(gain: ChangeGain, massKg: number): ChangeGain | null {
  if (Math.abs(massKg) < leastMassKg) return null;
  const scale = 0.1 / Math.abs(massKg);
  const entries = Object.entries(gain).map(([name, value]: [string, number | null]) => [
    name,
    value === null ? null : value * scale,
  ]);
  return Object.fromEntries(entries) as ChangeGain;
}
