import { percent } from '../assess/figures.js';
import { printable } from '../problem/printable.js';
import type { Comparison } from './compare.js';
import type { ChangeEffect } from './compare-effects.js';
import type { Standing } from './compare-standing.js';
import { wrapped } from './wrap.js';

/** Order, verdict and who leads, then and now, as filed where that can be read; and which change alone moves them. */
export function answerLines({ filed, explained, decisions }: Comparison, width: number): string[] {
  const rankings = [filed.earlier ?? explained.earlier, filed.later ?? explained.later].map(orderOf);
  const verdicts = [decisions.earlier.verdict, decisions.later.verdict];
  return [
    ...thenAndNow('Ranking', rankings),
    ...thenAndNow('Verdict', verdicts),
    leadWords(explained),
    ...aloneWords(explained),
  ].flatMap((line) => wrapped(printable(line), width, '', '  '));
}

function thenAndNow(name: string, [earlier, later]: string[]): string[] {
  if (earlier === later) return [`${name} then and now: ${later}`];
  return [`${name} then: ${earlier}`, `${name} now:  ${later}`];
}

const orderOf = ({ candidates }: { candidates: readonly { id: string }[] }): string =>
  candidates.map(({ id }) => id).join(', ');

/** Who leads in most draws; where no bands are given, on nominal figures. */
function leadWords({ earlier, later }: Comparison['explained']): string {
  const [before, after] = [earlier, later].map(leaderOf) as [Lead, Lead];
  if (before.id === after.id) return `${before.id} leads both: ${before.how} then, ${after.how} now.`;
  return `${before.id} led ${before.how}; ${after.id} leads now ${after.how}.`;
}

interface Lead {
  id: string;
  how: string;
}

function leaderOf({ candidates, leader }: Standing): Lead {
  const shares = candidates.flatMap(({ id, leadProbability }) =>
    leadProbability === null ? [] : [{ id, share: leadProbability }],
  );
  const [most] = shares.sort((a, b) => b.share - a.share);
  if (most === undefined) return { id: leader ?? 'nobody', how: 'on nominal figures' };
  return { id: most.id, how: `in ${percent(most.share)} of the draws` };
}

/** Which changes move verdict or ranking by themselves. */
function aloneWords({ earlier, singles }: Comparison['explained']): string[] {
  if (singles.length < 2) return [];
  const lines = singles.flatMap((single) => {
    const moved = [
      ...(kindOf(single) === kindOf(earlier) ? [] : [single.verdict.sentence]),
      ...(keepsOrder(earlier, single.ranking) ? [] : [`Ranking: ${single.ranking.join(', ')}.`]),
      ...(single.bandsGiven ? [] : ['No bands, figures nominal.']),
    ];
    return moved.length === 0 ? [] : [`${single.change.name} alone: ${moved.join(' ')}`];
  });
  const others = lines.length === 0 ? 'No change' : 'No other change';
  return lines.length === singles.length
    ? lines
    : [...lines, `${others} alone gives another verdict or ranking.`];
}

/** Whether those who are in both stand in the same order. */
function keepsOrder({ candidates }: Standing, ranking: readonly string[]): boolean {
  const before = candidates.map(({ id }) => id).filter((id) => ranking.includes(id));
  return ranking.filter((id) => before.includes(id)).join() === before.join();
}

/** What is advised; the shares of draws in its sentence move with every change. */
const kindOf = ({ verdict: { kind, leader, change } }: Pick<ChangeEffect, 'verdict'>): string =>
  JSON.stringify([kind, leader, change]);
