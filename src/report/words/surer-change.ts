import type { ReportContext } from '../context.js';
import { probability } from './bands.js';
import { withReading } from './figures.js';

/**
 * What a reader who would rather be sure could do instead of the change that the verdict advises for its few hours:
 * the surest other one; empty where none is surer.
 */
export function surerChangeWords({ assessment, phrases }: ReportContext): string {
  const { verdict, lesserChanges } = assessment;
  const advised = lesserChanges.find(({ parts }) => parts.join() === verdict.change.join());
  if (advised === undefined) return '';
  const sure = (change: typeof advised) => change.passProbability ?? 0;
  const [surest] = lesserChanges
    .filter((change) => change.parts.length === 1 && change.passes === true && sure(change) > sure(advised))
    .sort((a, b) => sure(b) - sure(a) || a.burden.workTimeS - b.burden.workTimeS);
  if (surest === undefined) return '';
  return phrases('surer-change', {
    change: surest.title,
    work: withReading(surest.burden.workTimeS, 'hours'),
    share: probability(sure(surest)),
    advised: withReading(advised.burden.workTimeS, 'hours'),
  });
}
