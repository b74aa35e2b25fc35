import { mean } from 'simple-statistics';
import { type Ensemble, type OutcomeName, outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import { EnsembleRun } from '../../simulate/ensemble/run-ensemble.js';
import type { CandidateRun } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import type { LimitOutcome } from '../assessment.js';
import type { ChangeGainBands, RatedChange } from '../certainty.js';
import { tier } from '../choosing/drawn-worths.js';
import type { LesserChange, LesserChanges } from '../lesser-changes/lesser-change.js';
import type { Proposal } from '../lesser-changes/proposal.js';
import { proposalOf } from '../lesser-changes/proposal-of.js';
import { isCostLeftOut } from '../lesser-changes/unknown-price.js';
import { enoughGain } from '../thresholds.js';
import { valueAt } from '../value-at-path.js';
import { bandOf, quantileOf, shareOf } from './bands.js';
import type { DrawnLimits } from './drawn-limits.js';
import { type DrawnStudy, drawnStudy, utilitiesOf } from './drawn-study.js';

/** Draws on which each change is tried: a part of those of the study, so that before and after are compared draw by draw. */
const mostDraws = 256;

/** What rating the changes needs beside the changes themselves. */
export interface RatingParts {
  study: Study;
  baseline: Candidate;
  /** The run and the limits of the drive of today, nominal. */
  run: CandidateRun;
  limits: readonly LimitOutcome[];
  ensemble: Ensemble;
  drawn: DrawnStudy;
  /** The candidate that the verdict is about; null when that is the drive of today. */
  leaderId: string | null;
}

/**
 * The ladder of lesser changes, then the best pair, each with what the draws say of it.
 * @param parts null where no bands are given
 * @param enough for a ranking: no change that takes more work than the first good enough one is looked at
 */
export function ratedChanges(
  changes: LesserChanges,
  parts: RatingParts | null,
  enough: ((change: RatedChange) => boolean) | null = null,
): RatedChange[] {
  const all = [...changes.ladder, ...(changes.bestPair === null ? [] : [changes.bestPair])].map(unrated);
  if (parts === null) return all;
  const base = baselineDraws(parts);
  const costLeftOut = isCostLeftOut(all);
  const byWork = [...all].sort((a, b) => a.burden.workTimeS - b.burden.workTimeS);
  let mostWorkS = Number.POSITIVE_INFINITY;
  for (const change of byWork) {
    if (change.burden.workTimeS > mostWorkS) break;
    const proposal = proposalOf(change, changes, { study: parts.study, candidate: parts.baseline });
    if (proposal === null) continue;
    Object.assign(change, rating(proposal, parts, base, costLeftOut));
    if (enough?.(change)) mostWorkS = change.burden.workTimeS;
  }
  return all;
}

const unrated = (change: LesserChange): RatedChange => ({
  ...change,
  gainBands: null,
  passProbability: null,
  leaderGainRatio: null,
  replaceProbability: null,
});

/** The first draws of the drive of today as it is. */
interface BaselineDraws {
  drawCount: number;
  columns: Float64Array[];
  scores: Float64Array;
  /** Its score where all limits hold, else 0, and the leader's; null where the leader is the same drive. */
  utilities: Float64Array;
  leaderUtilities: Float64Array | null;
  /** The leader's with cost worth to it what it is worth to the drive of today. */
  leaderWithoutCost: Float64Array | null;
}

function baselineDraws({ baseline, ensemble, drawn, leaderId }: RatingParts): BaselineDraws {
  const index = ensemble.candidateIds.indexOf(baseline.id);
  const drawCount = Math.min(mostDraws, ensemble.drawCount);
  const utilities = utilitiesOf(drawn);
  const first = (column: Float64Array) => column.subarray(0, drawCount);
  const leader = leaderId === null ? null : drawn.candidateIds.indexOf(leaderId);
  const ofLeader = (all: Float64Array[]) => (leader === null ? null : first(all[leader]!));
  return {
    drawCount,
    columns: ensemble.outcomes[index]!.map(first),
    scores: first(drawn.scores[index]!),
    utilities: first(utilities[index]!),
    leaderUtilities: ofLeader(utilities),
    leaderWithoutCost: ofLeader(utilitiesOf(costWorthAsTo(index, drawn))),
  };
}

/** The judged draws with cost worth to every candidate what it is worth to one of them. */
function costWorthAsTo(index: number, drawn: DrawnStudy): DrawnStudy {
  const place = drawn.criteria.findIndex(({ id }) => id === 'cost');
  if (place < 0) return drawn;
  const { worths, criterionCount } = drawn.worths;
  const weight = drawn.ownWeights[place]!;
  const worthAt = (candidate: number, draw: number) => worths[candidate]![draw * criterionCount + place]!;
  const scores = drawn.scores.map((own, candidate) =>
    own.map((score, draw) => score + weight * (worthAt(index, draw) - worthAt(candidate, draw))),
  );
  return { ...drawn, scores };
}

/** What the draws say of one change. */
function rating(
  proposal: Proposal,
  parts: RatingParts,
  base: BaselineDraws,
  costLeftOut: boolean,
): Pick<RatedChange, 'gainBands' | 'passProbability' | 'leaderGainRatio' | 'replaceProbability'> {
  const columns = drawnWith(proposal, parts, base.drawCount);
  const runtimes = columns[outcomeIndex.runtimeS]!.map((timeS) => (Number.isNaN(timeS) ? 0 : timeS)).sort();
  const figures = {
    runtimeP10S: quantileOf(runtimes, 0.1),
    holdEffortRatio: null,
    torqueMarginRatio: null,
    columns,
  };
  const judged = { study: parts.study, candidate: parts.baseline, run: parts.run, drawn: figures };
  const limits = parts.limits.map((limit) =>
    limit.criterion === 'runtime_p10' ? { ...limit, passes: figures.runtimeP10S >= limit.limit } : limit,
  );
  const drawnAt = (cost: Float64Array) =>
    drawnStudy(parts.study.criteria, [{ judged, limits }], {
      candidateIds: [parts.baseline.id],
      drawCount: base.drawCount,
      outcomes: [columns.with(outcomeIndex.cost, cost)],
    });
  const drawn = drawnAt(columns[outcomeIndex.cost]!);
  const { scores } = costLeftOut ? drawnAt(base.columns[outcomeIndex.cost]!) : drawn;
  // The leader's price is known: only a change without one is compared with it without cost, limits as they are.
  const isPriced = proposal.burden.costMoney !== null;
  const utilities = utilitiesOf(isPriced ? drawn : { ...drawn, scores })[0]!;
  const ofLeader = isPriced ? base.leaderUtilities : base.leaderWithoutCost;
  const [limitsWithIt] = drawn.limits;
  return {
    gainBands: gainBands(base, columns, scores[0]!),
    passProbability: limitsWithIt!.passProbability,
    ...againstLeader(utilities, limitsWithIt!, base.utilities, ofLeader),
  };
}

/** What a change gains against what the leader would, on the average and draw by draw. */
function againstLeader(
  utilities: Float64Array,
  { tiers }: DrawnLimits,
  before: Float64Array,
  ofLeader: Float64Array | null,
): Pick<RatedChange, 'leaderGainRatio' | 'replaceProbability'> {
  if (ofLeader === null) return { leaderGainRatio: null, replaceProbability: null };
  const today = mean([...before]);
  const toGain = mean([...ofLeader]) - today;
  const isEnough = (draw: number) =>
    utilities[draw]! - before[draw]! >= enoughGain * (ofLeader[draw]! - before[draw]!);
  return {
    leaderGainRatio: toGain > 1e-9 ? (mean([...utilities]) - today) / toGain : null,
    replaceProbability: shareOf(utilities.length, (draw) => tiers[draw] === tier.passes && isEnough(draw)),
  };
}

/** The outcomes of the drive of today with a change, in the same draws as without it. */
function drawnWith(
  proposal: Proposal,
  { study, run, ensemble }: RatingParts,
  drawCount: number,
): Float64Array[] {
  const { setup } = proposal;
  const drawnBefore = new Map(ensemble.inputs.map(({ path, values }) => [path, values]));
  const changed = new EnsembleRun(
    setup.study,
    [setup.candidate],
    drawCount,
    study.seed,
    ({ path }, planned) => {
      const values = drawnBefore.get(path)?.slice(0, drawCount) ?? planned();
      return moved(values, valueAt(study, path), valueAt(setup.study, path));
    },
  );
  const [columns] = changed.emptyOutcomes();
  changed.run(0, drawCount, [columns!]);
  return corrected(columns!, proposal, run);
}

/** Draws about a figure that the change moves keep their distance from it, as a share. */
function moved(values: Float64Array, before: number | null, after: number | null): Float64Array {
  if (before === null || after === null || before === after) return values;
  return before === 0
    ? values.map((value) => value + after)
    : values.map((value) => (value * after) / before);
}

/** What the change itself weighs, costs and takes, and what the simulation of a changed study cannot know. */
function corrected(columns: Float64Array[], proposal: Proposal, run: CandidateRun): Float64Array[] {
  const { burden, addedBodyMassKg } = proposal;
  const withHold = (holdPackCurrentA: number, holdPowerW: number) =>
    proposal.corrected({ ...run, nominal: { ...run.nominal, holdPackCurrentA, holdPowerW } }).nominal;
  const rested = withHold(0, 0);
  const nominalVoltageV =
    run.nominal.holdPackCurrentA > 0 ? run.nominal.holdPowerW / run.nominal.holdPackCurrentA : 1;
  const held = withHold(1, nominalVoltageV);
  const fidelityRatio = (rested.cueFidelityRatio ?? 1) / (run.nominal.cueFidelityRatio ?? 1);
  const at = (name: OutcomeName, figure: (value: number) => number) => {
    columns[outcomeIndex[name]] = columns[outcomeIndex[name]]!.map(figure);
  };
  at(
    'holdPackCurrentA',
    (currentA) => rested.holdPackCurrentA + currentA * (held.holdPackCurrentA - rested.holdPackCurrentA),
  );
  at(
    'holdPowerW',
    (powerW) => rested.holdPowerW + (powerW / nominalVoltageV) * (held.holdPowerW - rested.holdPowerW),
  );
  at('cueFidelityRatio', (ratio) => Math.min(1, ratio * fidelityRatio));
  at('bodyMassKg', (massKg) => massKg + addedBodyMassKg);
  at('cost', (money) => money + (burden.costMoney ?? Number.NaN));
  at('reworkTimeS', (timeS) => timeS + burden.workTimeS);
  return columns;
}

function gainBands(base: BaselineDraws, columns: Float64Array[], scores: Float64Array): ChangeGainBands {
  const more = (name: OutcomeName, sign = 1) => {
    const [before, after] = [base.columns[outcomeIndex[name]]!, columns[outcomeIndex[name]]!];
    return bandOf(after.map((value, draw) => sign * (value - before[draw]!)));
  };
  const less = (name: OutcomeName) => more(name, -1);
  return {
    score: bandOf(scores.map((score, draw) => score - base.scores[draw]!)),
    runtimeS: more('runtimeS'),
    holdPowerW: less('holdPowerW'),
    meanPackCurrentA: less('meanPackCurrentA'),
  };
}
