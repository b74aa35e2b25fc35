import { formatQuantity } from '../quantity/format.js';
import type { CriterionId } from '../study/choosing.js';
import { criterionFacts } from '../study/choosing-fields.js';
import type { Study } from '../study/study.js';
import type { Assessment, CandidateAssessment, LimitOutcome } from './assessment.js';
import { limitName } from './criterion-words.js';
import { hours, mass, minutes, plain, volts, watts } from './figures.js';

type Answer = Assessment['answer'];

/**
 * One sentence and three reasons, from nominal figures: the leader against the drive that exists today.
 * @param inRank candidates in rank order
 */
export function answerOf(study: Study, inRank: CandidateAssessment[]): Answer {
  const ranked = withDistinctLabels(inRank);
  const first = ranked[0];
  if (first === undefined) return { sentence: 'There is no candidate to compare.', reasons: [] };
  const baseline = ranked.find((candidate) => candidate.isBaseline) ?? null;
  if (first.passes !== true) return nothingPasses(ranked, baseline);
  if (baseline === null) return best(study, first, ranked[1] ?? null);
  return first === baseline ? keep(study, baseline, ranked[1] ?? null) : change(study, first, baseline);
}

function nothingPasses(ranked: CandidateAssessment[], baseline: CandidateAssessment | null): Answer {
  const open = ranked.filter((candidate) => candidate.passes === null);
  const sentence =
    open.length > 0
      ? `No candidate is known to pass every limit; ${open[0]!.label} passes what could be judged.`
      : 'No candidate passes every limit.';
  const shown = [...new Set([ranked[0]!, ...(baseline ? [baseline] : []), ...ranked])].slice(0, 3);
  return { sentence, reasons: shown.map((candidate) => `${candidate.label} ${obstacles(candidate)}.`) };
}

function best(study: Study, leader: CandidateAssessment, second: CandidateAssessment | null): Answer {
  const over = second === null ? 'it is the only candidate' : `ahead of ${second.label}`;
  const sentence = `${leader.label} leads on the criteria as weighted: ${over}.`;
  const reasons = second === null ? [runtimeAlone(study, leader)] : comparisons(study, leader, second);
  return { sentence, reasons: reasons.slice(0, 3) };
}

function keep(study: Study, baseline: CandidateAssessment, second: CandidateAssessment | null): Answer {
  const sentence = `Keep ${baseline.label}: no other drive does better on the criteria as weighted.`;
  if (second === null) return { sentence, reasons: [runtimeAlone(study, baseline)] };
  const reasons = [
    second.passes === true
      ? `The next best, ${second.label}, scores ${plain(second.score)} against ${plain(baseline.score)}.`
      : `The next in line, ${second.label}, ${obstacles(second)}.`,
    ...comparisons(study, second, baseline),
  ];
  return { sentence, reasons: reasons.slice(0, 3) };
}

function change(study: Study, leader: CandidateAssessment, baseline: CandidateAssessment): Answer {
  const sentence = `Change to ${leader.label}: it leads ${baseline.label}, the drive of today, with a score of ${plain(leader.score)} against ${plain(baseline.score)}.`;
  if (baseline.passes === true) return { sentence, reasons: comparisons(study, leader, baseline) };
  const reasons = [
    `${baseline.label} ${obstacles(baseline)}.`,
    runtimes(study, leader, baseline),
    price(study, leader, baseline),
  ];
  return { sentence, reasons: reasons.filter((line) => line !== null) };
}

/** What one candidate gives and takes against another, the weightiest first. */
function comparisons(study: Study, a: CandidateAssessment, b: CandidateAssessment): string[] {
  return [runtimes(study, a, b), holding(a, b), price(study, a, b)].filter((line) => line !== null);
}

function runtimes(study: Study, a: CandidateAssessment, b: CandidateAssessment): string | null {
  const [first, second] = [a.nominal.runtimeS, b.nominal.runtimeS];
  if (first === null) return null;
  const target = study.targetRuntimeS === null ? '' : `; ${minutes(study.targetRuntimeS)} would be enough`;
  if (second === null) return `It runs ${minutes(first)} on one pack${target}.`;
  return `One pack lasts ${minutes(first)} with ${a.label}, ${minutes(second)} with ${b.label}${target}.`;
}

function holding(a: CandidateAssessment, b: CandidateAssessment): string | null {
  const power = (candidate: CandidateAssessment) =>
    candidate.nominal.holdCurrentUsed === 'unpowered'
      ? `${candidate.label} holds with the power off`
      : `${candidate.label} draws ${watts(candidate.nominal.holdPowerW)} while it holds`;
  if (a.nominal.holdCurrentUsed === 'unpowered' && b.nominal.holdCurrentUsed === 'unpowered') return null;
  return `${power(a)}; ${power(b)}.`;
}

function price(study: Study, a: CandidateAssessment, b: CandidateAssessment): string | null {
  const parts: string[] = [];
  const [massA, massB] = [a.nominal.bodyMassKg, b.nominal.bodyMassKg];
  if (massA !== null && massB !== null) {
    const where = study.carrier.worn ? ' on the body' : '';
    parts.push(`weighs ${mass(Math.abs(massA - massB))} ${massA >= massB ? 'more' : 'less'}${where}`);
  }
  const { cost, reworkTimeS } = a.nominal;
  if (cost !== null) parts.push(`costs ${`${plain(cost)} ${study.about.currency}`.trim()}`);
  if (reworkTimeS !== null) parts.push(`takes ${hours(reworkTimeS)} of work`);
  return parts.length === 0 ? null : `${a.label} ${joined(parts)}.`;
}

function joined(parts: string[]): string {
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

function runtimeAlone(study: Study, only: CandidateAssessment): string {
  return (
    runtimes(study, only, { ...only, nominal: { ...only.nominal, runtimeS: null } }) ??
    `${only.label} has no runtime.`
  );
}

/** Why a candidate does not pass, in words. */
export function obstacles(candidate: CandidateAssessment): string {
  const failed = candidate.limits.filter((limit) => limit.passes === false);
  if (failed.length > 0) return `fails: ${failed.map(obstacle).join(', ')}`;
  const open = candidate.limits.filter((limit) => limit.passes === null);
  return open.length > 0 ? `lacks ${open.map((limit) => limit.missing).join(', ')}` : 'passes';
}

function obstacle(limit: LimitOutcome): string {
  const name = limitName(limit.criterion);
  if (limit.reason !== undefined) return `${name} (${limit.reason})`;
  const [is, asked] = [limitFigure(limit, limit.value), limitFigure(limit, limit.limit)];
  if (is === null || asked === null) return name;
  return `${name} (${is} where ${limit.direction === 'at-least' ? 'at least' : 'at most'} ${asked} is asked)`;
}

/** A figure of a limit with its unit; null where it is only met or not. */
function limitFigure({ criterion }: LimitOutcome, value: number | null): string | null {
  if (value === null || !Object.hasOwn(criterionFacts, criterion)) return null;
  if (criterion === 'voltage') return volts(value);
  const { dimension } = criterionFacts[criterion as CriterionId];
  if (dimension === null) return null;
  return dimension === 'ratio' || dimension === 'money' ? plain(value) : formatQuantity(value, dimension);
}

/** Labels as they are, with the id where two candidates carry the same one. */
function withDistinctLabels(ranked: CandidateAssessment[]): CandidateAssessment[] {
  const times = (label: string) => ranked.filter((candidate) => candidate.label === label).length;
  return ranked.map((candidate) =>
    times(candidate.label) === 1
      ? candidate
      : { ...candidate, label: `${candidate.label} (${candidate.id})` },
  );
}
