import type { CandidateAssessment } from '../../assess/assessment.js';
import { listed } from '../../assess/figures.js';
import { bandOf, type ReportContext } from '../context.js';
import { probability } from './bands.js';
import { noRuntimeReason } from './outcome-words.js';

/** Candidates that by the nominal figures cannot play the show to its end, each with the reason; empty for none. */
export function unplayedWords({ phrases }: ReportContext, unplayed: readonly CandidateAssessment[]): string {
  return listed(
    unplayed.map((candidate) => {
      const share = bandOf(candidate, 'runtimeS')?.occursFraction ?? 0;
      const values = { candidate: candidate.label, reason: noRuntimeReason(candidate) };
      return share > 0
        ? phrases('unplayed-often', { ...values, share: probability(share) })
        : phrases('unplayed', values);
    }),
  );
}

/** Why heat in the show is not known by the nominal figures, for whom it is not; empty where it is for all. */
export function unknownHeatWords(context: ReportContext): string {
  const { phrases, candidates } = context;
  const unknown = candidates.filter(({ nominal }) => nominal.windingTemperatureK === null);
  const unplayed = unknown.filter(({ nominal }) => nominal.loopS === null);
  const isDrawn = unplayed.some((candidate) => bandOf(candidate, 'windingTemperatureK') !== null);
  return [
    ...unknown
      .filter((candidate) => !unplayed.includes(candidate))
      .map(({ label }) => phrases('heat-never-settles', { candidate: label })),
    ...(unplayed.length === 0
      ? []
      : [
          phrases(isDrawn ? 'heat-unplayed' : 'heat-unplayed-ever', {
            each: unplayedWords(context, unplayed),
          }),
        ]),
  ].join(' ');
}
