import type { DriveKind } from '../drives/sheet.js';
import { spreadQuantiles } from '../quantity/quantile.js';
import type { CandidateRun } from '../simulate/outcome.js';
import type { Provenance } from '../study/provenance.js';
import type { Candidate, Study } from '../study/study.js';
import type { CandidateAssessment, MeasurementAdvice } from './assessment.js';
import { type BenchWork, benchWork, measuredField } from './bench-work.js';
import type { Judged } from './criterion-values.js';
import { decimal, minutes } from './figures.js';
import { limitsOf, passesAll } from './limits.js';
import { criterionOutcomes, scoreOf } from './scores.js';
import { valueAt, withValueAt } from './value-at-path.js';

/** Inputs tried, most spread first; each costs two runs of two candidates. */
const triedInputs = 24;

/** A smaller change of the score does not show in two digits. */
const visibleScore = 0.005;

const seen = (score: number) => (score >= visibleScore ? score : 0);

/** What the swings need from outside: the simulation, and how the field table says to measure. */
export interface MeasuringTools {
  simulate(study: Study, candidate: Candidate): CandidateRun;
  /** null for a field that the kind of drive, or the study, does not have. */
  howToMeasure(field: string, kind: DriveKind | null): { meaning: string; how: string } | null;
}

/** An input that a person could measure, and its 10 % and 90 % points. */
interface Uncertain {
  provenance: Provenance;
  /** What to measure: the field itself, or the one that replaces an assumption. */
  field: string;
  low: number;
  high: number;
  relativeWidth: number;
  bench: BenchWork;
  told: { meaning: string; how: string };
}

/** What an input's range does to the comparison. */
interface Swing {
  input: Uncertain;
  /** Change of the lead in score, 0…1. */
  score: number;
  /** Change of the lead in runtime, in seconds. */
  runtimeS: number;
  /** Candidates whose limits hold at one end of the range and not at the other. */
  flips: Candidate[];
}

/**
 * What to measure first: each input that can be measured is put at its 10 % and its 90 % point, and the inputs
 * are ordered by what that does to the lead of the first candidate over the drive of today (or the second).
 * @param ranked candidates in rank order
 */
export function measurementAdvice(
  study: Study,
  ranked: CandidateAssessment[],
  tools: MeasuringTools,
): MeasurementAdvice[] {
  const pair = comparedPair(study, ranked);
  if (pair.length === 0) return [];
  const now = pair.map((candidate) => standingOf(study, candidate.id, tools));
  return uncertainInputs(study, pair, tools)
    .map((input) => swingOf(study, pair, now, input, tools))
    .filter((swing) => swing.flips.length > 0 || swing.score >= visibleScore || swing.runtimeS >= 60)
    .sort(
      (a, b) => b.flips.length - a.flips.length || seen(b.score) - seen(a.score) || b.runtimeS - a.runtimeS,
    )
    .map((swing) => adviceFrom(swing, pair));
}

/** The first in rank and the drive of today; where they are the same, the second. */
function comparedPair(study: Study, ranked: CandidateAssessment[]): Candidate[] {
  const [first, second] = ranked;
  const other = ranked.find((entry) => entry.isBaseline && entry !== first) ?? second;
  const ids = [first?.id, other?.id];
  return ids.flatMap((id) => study.candidates.filter((candidate) => candidate.id === id));
}

function uncertainInputs(study: Study, pair: Candidate[], tools: MeasuringTools): Uncertain[] {
  const inputs: Uncertain[] = [];
  for (const provenance of study.provenance) {
    const nominal = valueAt(study, provenance.path);
    const owner = ownerOf(provenance, study);
    if (nominal === null || (owner !== null && !pair.includes(owner))) continue;
    const { p10: low, p90: high } = spreadQuantiles(provenance.spread, nominal);
    const field = measuredField(provenance.field);
    const bench = benchWork(field);
    const told = tools.howToMeasure(field, owner?.kind ?? null);
    if (!(high > low) || bench === null || told === null) continue;
    const relativeWidth = (high - low) / Math.max(Math.abs(nominal), 1e-12);
    inputs.push({ provenance, field, low, high, relativeWidth, bench, told });
  }
  return inputs.sort((a, b) => b.relativeWidth - a.relativeWidth).slice(0, triedInputs);
}

/** The candidate a value belongs to; null when it is shared by all. */
function ownerOf({ path }: Provenance, study: Study): Candidate | null {
  return study.candidates.find((candidate) => path.startsWith(`candidates.${candidate.id}.`)) ?? null;
}

interface Standing {
  score: number;
  runtimeS: number;
  passes: boolean | null;
}

function swingOf(
  study: Study,
  pair: Candidate[],
  now: Standing[],
  input: Uncertain,
  tools: MeasuringTools,
): Swing {
  const owner = ownerOf(input.provenance, study);
  const standingsAt = (value: number) => {
    const changed = withValueAt(study, input.provenance.path, value) ?? study;
    // A candidate's own figure leaves the other candidate as it stands.
    return pair.map((candidate, index) =>
      owner === null || owner === candidate ? standingOf(changed, candidate.id, tools) : now[index]!,
    );
  };
  const [low, high] = [standingsAt(input.low), standingsAt(input.high)];
  const lead = (standings: Standing[], figure: (standing: Standing) => number) =>
    figure(standings[0]!) - (standings[1] === undefined ? 0 : figure(standings[1]));
  const change = (figure: (standing: Standing) => number) => Math.abs(lead(high, figure) - lead(low, figure));
  return {
    input,
    score: change(({ score }) => score),
    runtimeS: change(({ runtimeS }) => runtimeS),
    flips: pair.filter((_, index) => low[index]!.passes !== high[index]!.passes),
  };
}

function standingOf(study: Study, id: string, tools: MeasuringTools): Standing {
  const candidate = study.candidates.find((entry) => entry.id === id)!;
  const judged: Judged = { study, candidate, run: tools.simulate(study, candidate) };
  return {
    score: scoreOf(criterionOutcomes(judged)),
    runtimeS: judged.run.nominal.runtimeS ?? 0,
    passes: passesAll(limitsOf(judged)),
  };
}

function adviceFrom(swing: Swing, pair: Candidate[]): MeasurementAdvice {
  const { provenance, field, bench, told } = swing.input;
  return {
    field,
    candidate:
      pair.find((candidate) => provenance.path.startsWith(`candidates.${candidate.id}.`))?.id ?? null,
    label: told.meaning,
    why: reasonFor(swing, pair),
    instrument: bench.instrument,
    method: told.how,
    minutes: bench.minutes,
    swing: swing.score,
  };
}

/** Names the outcome that moves. */
function reasonFor({ flips, score, runtimeS }: Swing, pair: Candidate[]): string {
  const [first, second] = pair as [Candidate, Candidate | undefined];
  const lead = second === undefined ? first.label : `the lead of ${first.label} over ${second.label}`;
  const sizes: string[] = [];
  if (score >= visibleScore) sizes.push(`${decimal(score, 2)} of the score`);
  if (runtimeS >= 60) sizes.push(`${minutes(runtimeS)} of runtime`);
  const moves = sizes.length === 0 ? [] : [`moves ${lead} by ${sizes.join(' and ')}`];
  const decides = flips.map((candidate) => `decides whether ${candidate.label} passes every limit`);
  return [...decides, ...moves].join('; ');
}
