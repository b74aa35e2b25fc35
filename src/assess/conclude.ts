import type { CandidateRun } from '../simulate/outcome.js';
import type { ViewWeights } from '../study/choosing.js';
import type { Study } from '../study/study.js';
import { type AssessmentContext, assess, judgedOf } from './assess.js';
import type { Assessment, CandidateAssessment, MeasurementAdvice } from './assessment.js';
import { cautionsOf } from './cautions.js';
import { certaintyOf } from './certainty/certainty-of.js';
import { choiceOf } from './certainty/choice-of.js';
import { drawnFigures } from './certainty/drawn-figures.js';
import { type DrawnStudy, drawnStudy, type NominalJudgement } from './certainty/drawn-study.js';
import type { Draws } from './certainty/draws.js';
import { drawnFindings } from './certainty/findings.js';
import type { Certainty } from './certainty.js';
import type { Choice } from './choosing/rank-again.js';
import { changedDay } from './conclude/changed-day.js';
import { breakEvenBetween, daysOf, payProbability } from './conclude/event-day.js';
import { startOf } from './conclude/ladder.js';
import type { DrawnFigures, Judged } from './criterion-values.js';
import { leaveOutBlanks, viewsWithoutBlanks } from './left-out.js';
import { limitsOf } from './limits.js';
import { type MeasuringTools, measurementAdvice } from './measurements.js';
import type { FoundChanges, Further } from './tasks.js';
import { alone, type Pending, type Threads } from './threads.js';
import { patientEvents } from './verdict/decide.js';
import { labelsOf } from './verdict/labels.js';
import { unsureVerdict } from './verdict/nominal-verdict.js';
import { standingsIfHeld } from './verdict/open-limits.js';
import { verdictOf } from './verdict/verdict.js';
import { contestOf, leaderOf, leastPass, type VerdictParts } from './verdict/verdict-parts.js';
import { adviceFrom } from './what-if/advice.js';
import { knowables } from './what-if/knowable.js';
import { type Measurable, measureFirst } from './what-if/measure-first.js';

/** What a conclusion needs from outside. */
export interface ConclusionTools extends MeasuringTools {
  /** Other people's weights. */
  views: readonly ViewWeights[];
  /** `ranking` leaves out what only the report shows: what would change the order, and run-down bands. */
  depth: 'ranking' | 'report';
  /** Told as each step begins. */
  progress(step: string): void;
  /** Others that compute something meanwhile. */
  threads?: Threads;
  /** Given all that the ranking was made from, for who wants to rank again; too large to be part of the results. */
  keepChoice?(choice: Choice): void;
}

/**
 * The whole judgement of a study: nominal figures, draws, choosing, lesser changes, the day, and the verdict. Pure:
 * the same study gives the same assessment.
 * @param runs nominal, one for each candidate
 * @param drawing the draws, begun
 */
export function conclude(
  given: Study,
  runs: CandidateRun[],
  drawing: Pending<Draws>,
  context: Omit<AssessmentContext, 'drawn'>,
  tools: ConclusionTools,
): Assessment {
  tools.progress('drawing what is not exactly known');
  const draws = drawing();
  const figures = drawnFigures(draws.ensemble);
  const study = leaveOutBlanks(given, runs);
  const assessed = assess(study, runs, { ...context, drawn: figures });
  const judged = judgedOf(study, runs, figures);
  const nominal = judged.map((entry) => ({ judged: entry, limits: limitsOf(entry) }));
  const drawn = drawnStudy(study.criteria, nominal, draws.ensemble);
  const { seed } = study;
  const certainty = certaintyOf({
    seed,
    ranked: assessed.candidates,
    nominal,
    draws,
    drawn,
    views: viewsWithoutBlanks(tools.views, study, runs),
    depth: tools.depth,
  });
  const isSure = certainty.calibration?.bandsGiven !== false;
  tools.keepChoice?.(choiceOf(study.criteria, nominal, draws.ensemble, isSure));
  const found = { ...assessed, draws: draws.ensemble.drawCount, certainty };
  const parts: Parts = { study, judged, figures, nominal, draws, drawn, certainty, tools };
  if (found.candidates.length === 0) return found;
  return isSure ? sure(found, parts) : unsure(found, parts);
}

/** What every step hands on. */
interface Parts {
  study: Study;
  /** In the study's order, which is that of the draws; so are `nominal` and `drawn`. */
  judged: Judged[];
  figures: ReadonlyMap<string, DrawnFigures>;
  nominal: NominalJudgement[];
  draws: Draws;
  drawn: DrawnStudy;
  certainty: Certainty;
  tools: ConclusionTools;
}

/** The conclusion where the draws say how sure everything is. */
function sure(found: Assessment, parts: Parts): Assessment {
  const { study, certainty, tools } = parts;
  const candidates = found.candidates.map((candidate) => withDraws(candidate, parts));
  const leader = leaderOf(candidates, certainty);
  const baseline = candidates.find(({ isBaseline }) => isBaseline) ?? null;
  const pair = contestOf(candidates, certainty, leader, baseline);
  const shownIds = shownOf(candidates, leader, baseline);
  const further = tools.depth === 'report' ? begunFurther(candidates, parts, baseline, shownIds) : null;
  const lesser = baseline === null ? null : begunChanges(parts, baseline, leader);
  tools.progress('finding what to measure first');
  const measurables = measurablesOf(parts, pair);
  tools.progress('planning the day');
  const days = daysOf(study, candidates, (id) => parts.figures.get(id)!.columns);
  tools.progress('trying lesser changes');
  const { found: sketched = null, rated: changes = [] } = lesser?.() ?? {};
  const paid =
    baseline === null || leader === baseline ? null : breakEvenBetween(study, baseline, leader, days);
  tools.progress('finding what would change the order');
  const { orderChanges = null, runDownBands = [] } = further?.() ?? {};
  const worths = measurables.map(({ worth }) => worth);
  const sensitivity = orderChanges && { ...orderChanges, measureFirst: worths };
  let probabilityOfPay: number | null = null;
  const verdictParts: VerdictParts = {
    study,
    ranked: candidates,
    certainty,
    leader,
    baseline,
    changes,
    breakEven: paid,
    payProbability: () => (probabilityOfPay ??= payingOf(parts, baseline, leader)),
    measurables,
    against: pair[1] ?? null,
    ifHeld: standingsIfHeld(parts.drawn),
    sensitivity,
  };
  const verdict = verdictOf(verdictParts);
  return {
    ...found,
    candidates,
    certainty: { ...certainty, sensitivity, runDownBands },
    verdict,
    cautions: cautionsOf(
      study,
      candidates.map((one) => judgedAs(parts, one)),
      candidates,
      days,
    ),
    lesserChanges: changes,
    lesserChangesFrom: sketched === null ? null : startOf(sketched),
    day:
      days.length === 0
        ? null
        : {
            candidate: verdict.leader ?? leader.id,
            changed: changedDay(
              study,
              verdict.change,
              sketched,
              baseline === null ? undefined : parts.figures.get(baseline.id)?.columns,
              baseline?.nominal,
            ),
            plans: days,
          },
    breakEven: paid,
    nextMeasurements: adviceFrom(measurables, study, labelsOf(candidates), pair),
  };
}

function payingOf(
  { study, draws, drawn }: Parts,
  baseline: CandidateAssessment | null,
  leader: CandidateAssessment,
): number {
  if (baseline === null) return 0;
  return payProbability(study, baseline, leader, draws.ensemble, drawn, patientEvents);
}

/** The conclusion where measured and believed agree in too few draws: nominal figures, and that said. */
function unsure(found: Assessment, parts: Parts): Assessment {
  const { study, certainty } = parts;
  const baseline = found.candidates.find(({ isBaseline }) => isBaseline) ?? null;
  const leader = found.candidates[0]!;
  const { found: sketched = null, rated: changes = [] } =
    baseline === null ? {} : begunChanges(parts, baseline, null)();
  const days = daysOf(study, found.candidates, () => null);
  return {
    ...found,
    verdict: unsureVerdict(study, found.candidates, found.answer, certainty.calibration!),
    lesserChanges: changes,
    lesserChangesFrom: sketched === null ? null : startOf(sketched),
    day: days.length === 0 ? null : { candidate: leader.id, changed: null, plans: days },
    breakEven:
      baseline === null || leader === baseline ? null : breakEvenBetween(study, baseline, leader, days),
    nextMeasurements: nominalAdvice(found, parts),
  };
}

const nominalAdvice = ({ candidates }: Assessment, { study, tools }: Parts): MeasurementAdvice[] =>
  measurementAdvice(study, candidates, tools);

const judgedAs = ({ judged }: Parts, { id }: CandidateAssessment): Judged =>
  judged.find(({ candidate }) => candidate.id === id)!;

/** One candidate with its bands and what the draws found. */
function withDraws(candidate: CandidateAssessment, { certainty, draws, drawn }: Parts): CandidateAssessment {
  const { candidateIds, outcomes } = draws.ensemble;
  const index = candidateIds.indexOf(candidate.id);
  const { uncertain, acceptability } = certainty.candidates[candidate.id]!;
  const { passes, limits } = candidate;
  const findings = drawnFindings(outcomes[index]!, passes, limits, drawn.limits[index]!);
  return { ...candidate, uncertain, acceptability, findings: [...candidate.findings, ...findings] };
}

/** Whose runs the charts follow: the candidate the verdict is about, and the drive of today or else the next in rank. */
function shownOf(
  ranked: readonly CandidateAssessment[],
  leader: CandidateAssessment,
  baseline: CandidateAssessment | null,
): string[] {
  const other = baseline !== null && baseline !== leader ? baseline : ranked.find((one) => one !== leader);
  return other === undefined ? [leader.id] : [leader.id, other.id];
}

function measurablesOf({ study, draws, drawn, tools }: Parts, pair: string[]): Measurable[] {
  const all = knowables(study, draws.ensemble, tools.howToMeasure);
  // What nobody can measure is told by the report only.
  const asked = tools.depth === 'report' ? all : all.filter(({ bench }) => bench !== null);
  return measureFirst(asked, drawn, pair, study.seed);
}

const threadsOf = ({ tools }: Parts): Threads => tools.threads ?? alone;

/** @param leader whom the verdict is about; null where the draws say nothing */
function begunChanges(
  parts: Parts,
  baseline: CandidateAssessment,
  leader: CandidateAssessment | null,
): Pending<FoundChanges> {
  const { study, draws, drawn, certainty, tools } = parts;
  const judged = judgedAs(parts, baseline);
  const isRanking = tools.depth === 'ranking';
  const standsWell =
    leader === baseline && (certainty.candidates[baseline.id]!.passProbability ?? 0) >= leastPass;
  const rating =
    leader === null || (isRanking && standsWell)
      ? null
      : {
          study,
          baseline: judged.candidate,
          run: judged.run,
          limits: baseline.limits,
          ensemble: draws.ensemble,
          drawn,
          leaderId: leader === baseline ? null : leader.id,
        };
  const replaced = isRanking ? leader : null;
  return threadsOf(parts).begin('lesserChanges', { study, baseline: judged, rating, replaced });
}

/** What only the report shows. */
function begunFurther(
  ranked: readonly CandidateAssessment[],
  parts: Parts,
  baseline: CandidateAssessment | null,
  shownIds: readonly string[],
): Pending<Further> {
  const { study, nominal, draws, certainty, figures } = parts;
  const passProbabilities = Object.fromEntries(
    Object.entries(certainty.candidates).map(([id, { passProbability }]) => [id, passProbability]),
  );
  return threadsOf(parts).begin('further', {
    study,
    ranked,
    pairIds: contestOf(ranked, certainty, ranked[0]!, baseline),
    nominal,
    ensemble: draws.ensemble,
    measured: draws.calibration !== null,
    passProbabilities,
    figures,
    shownIds,
    run: draws.run.describe(),
  });
}
