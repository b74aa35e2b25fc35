import type { Caution } from '../assessment.js';
import type { Judged } from '../criterion-values.js';
import { decimal, percent } from '../figures.js';
import { enoughMarginRatio } from '../thresholds.js';
import { about } from './caution.js';

/**
 * What the drive can give over the most it needs, whatever the criteria ask: from nominal figures, or where at least
 * half of the draws say so.
 */
export function effortCautions(judged: Judged): Caution[] {
  const nominal = judged.run.nominal.torqueMarginRatio;
  if (nominal === null) return [];
  const drawn = judged.drawn?.torqueMarginRatio ?? nominal;
  const margin = Math.min(nominal, drawn);
  if (margin >= enoughMarginRatio) return [];
  const often = drawn < nominal ? ', in half of the draws or more' : '';
  const words = {
    figure: `${decimal(margin, 2)} of the largest load`,
    action: 'Take a stronger drive, balance the feature, or shield it from wind.',
  };
  if (margin < 1) {
    const text = `Gives ${percent(margin)} of the effort that its worst moment takes${often}: it cannot hold or move there, and the feature sinks.`;
    return [about(judged, 'too-weak', 'severe', { ...words, text })];
  }
  const text = `Gives ${decimal(margin, 2)} times the effort that its worst moment takes${often}; less than ${enoughMarginRatio} times leaves nothing for friction, cold and an old pack.`;
  return [about(judged, 'little-effort-left', 'caution', { ...words, text })];
}
