import { obstacles } from '../answer.js';
import type { CandidateAssessment } from '../assessment.js';
import { weakestLimits } from '../certainty/findings.js';
import { inDraws } from '../certainty/sureness.js';
import type { Band } from '../certainty.js';
import { hours, mass, minutes, plain, watts } from '../figures.js';
import type { Decision } from './decide.js';
import { labelsOf, small } from './labels.js';
import { beatProbability, leastPass, tiedWithLeader, type VerdictParts } from './verdict-parts.js';

/** Most reasons that are told. */
const told = 5;

/** Why, in plain sentences made from the numbers, the weightiest first. */
export function reasonsFor(decision: Decision, parts: VerdictParts): string[] {
  const { leader, baseline, ranked } = parts;
  const second = ranked.find((candidate) => candidate !== leader) ?? null;
  const other = leader.isBaseline || baseline === null ? second : baseline;
  return [
    ...withChange(decision),
    ...contenders(parts),
    ...limitsOf(parts, baseline ?? leader),
    ...(baseline === null || leader === baseline ? [] : limitsOf(parts, leader)),
    ...runtimes(parts, leader, other),
    ...holding(parts, leader, other),
    ...price(parts, leader, other),
    ...paying(parts),
    ...flattered(parts),
  ].slice(0, told);
}

/** Chance to lead from which somebody else is worth a word. */
const contending = 0.1;

/** Who else leads how often, and who is tied with the leader. */
function contenders(parts: VerdictParts): string[] {
  const { ranked, leader, certainty } = parts;
  // Where not even the leader passes, those ahead in a draw are ahead among failures.
  if ((certainty.candidates[leader.id]!.passProbability ?? 1) < leastPass) return [];
  const label = labelsOf(ranked);
  const leads = (id: string) => certainty.candidates[id]!.leadProbability ?? 0;
  const others = ranked
    .filter((candidate) => candidate !== leader && leads(candidate.id) >= contending)
    .sort((a, b) => leads(b.id) - leads(a.id))
    .slice(0, 2);
  if (others.length === 0) return [];
  const told = others.map(({ id }) => `${label(id)} in ${inDraws(leads(id))}`);
  const tied = tiedWithLeader(parts).filter((candidate) => others.includes(candidate));
  const against = tied.map(
    ({ id }) => `of ${label(id)} in ${inDraws(beatProbability(certainty, leader.id, id))}`,
  );
  const tie =
    tied.length === 0 ? '' : ` One against one it is ahead ${against.join(' and ')}: too close to call.`;
  return [
    `${label(leader.id)} leads in ${inDraws(leads(leader.id))} of the draws, ${told.join(', ')}.${tie}`,
  ];
}

/** What the lesser change does. */
function withChange(decision: Decision): string[] {
  if (decision.kind !== 'keep with a lesser change') return [];
  const { title, passProbability, gainBands } = decision.change;
  const runtime = gainBands?.runtimeS ?? null;
  const longer = runtime === null ? '' : ` and a charge lasts ${range(runtime, minutes)} longer`;
  return [
    `With ${small(title)} every limit holds in ${inDraws(passProbability ?? 0)} of the draws${longer}; in gains of score a draw that breaks a limit counts nothing.`,
  ];
}

/** Whether a candidate passes, and which limit is the weakest. */
function limitsOf({ ranked, certainty, leader }: VerdictParts, candidate: CandidateAssessment): string[] {
  const { passProbability, limitProbabilities } = certainty.candidates[candidate.id]!;
  const label = labelsOf(ranked)(candidate.id);
  if (passProbability === null) {
    const benefit =
      candidate.isBaseline && candidate !== leader ? '; against the leader it counts as if it passed' : '';
    return candidate.passes === null
      ? [`${label} ${obstacles(candidate)}, so that it is not judged in full${benefit}.`]
      : [];
  }
  if (candidate.passes === false && passProbability < 0.005) return [`${label} ${obstacles(candidate)}.`];
  if (passProbability > 0.995) return [];
  const [weakest] = weakestLimits(candidate.limits, limitProbabilities);
  const which =
    weakest === undefined ? '' : `; ${weakest.name} is the weakest, with ${inDraws(weakest.probability)}`;
  return [`${label} passes every limit in ${inDraws(passProbability)} of the draws${which}.`];
}

function runtimes(
  { study, ranked, certainty }: VerdictParts,
  a: CandidateAssessment,
  b: CandidateAssessment | null,
): string[] {
  const label = labelsOf(ranked);
  const lasting = (candidate: CandidateAssessment) => {
    const band = certainty.candidates[candidate.id]!.uncertain.runtimeS;
    return band === undefined ? null : `${range(band, minutes)} with ${label(candidate.id)}`;
  };
  const first = lasting(a);
  if (first === null) return [];
  const second = b === null ? null : lasting(b);
  const target = study.targetRuntimeS === null ? '' : `; ${minutes(study.targetRuntimeS)} would be enough`;
  return [`One pack lasts ${first}${second === null ? '' : `, ${second}`}${target}.`];
}

function holding(
  { ranked, certainty }: VerdictParts,
  a: CandidateAssessment,
  b: CandidateAssessment | null,
): string[] {
  if (b === null) return [];
  const label = labelsOf(ranked);
  const power = (candidate: CandidateAssessment) => {
    if (candidate.nominal.holdCurrentUsed === 'unpowered')
      return `${label(candidate.id)} holds with the power off`;
    const band = certainty.candidates[candidate.id]!.uncertain.holdPowerW;
    return band === undefined ? null : `${label(candidate.id)} draws ${range(band, watts)} while it holds`;
  };
  const both = [power(a), power(b)].filter((text) => text !== null);
  const unpowered = [a, b].every(({ nominal }) => nominal.holdCurrentUsed === 'unpowered');
  return both.length < 2 || unpowered ? [] : [`${both.join('; ')}.`];
}

/** What the change takes against what stands beside it. */
function price(
  { study, ranked }: VerdictParts,
  a: CandidateAssessment,
  b: CandidateAssessment | null,
): string[] {
  const parts: string[] = [];
  const [massA, massB] = [a.nominal.bodyMassKg, b?.nominal.bodyMassKg ?? null];
  if (massA !== null && massB !== null && Math.abs(massA - massB) > 5e-4) {
    parts.push(
      `weighs ${mass(Math.abs(massA - massB))} ${massA > massB ? 'more' : 'less'}${study.carrier.worn ? ' on the body' : ''}`,
    );
  }
  const { cost, reworkTimeS } = a.nominal;
  if (cost !== null && cost > 0) parts.push(`costs ${`${plain(cost)} ${study.about.currency}`.trim()}`);
  if (reworkTimeS !== null && reworkTimeS > 0) parts.push(`takes ${hours(reworkTimeS)} of work`);
  const last = parts.pop();
  if (last === undefined) return [];
  const listed = parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
  return [`${labelsOf(ranked)(a.id)} ${listed}.`];
}

function paying({ breakEven }: VerdictParts): string[] {
  return breakEven === null ? [] : [breakEven.sentence];
}

/** Listings flatter: the order of the figures as they stand can be another one. */
function flattered({ ranked, leader }: VerdictParts): string[] {
  const first = ranked[0];
  if (first === undefined || first === leader || first.passes !== true) return [];
  return [
    `With every figure as it stands ${labelsOf(ranked)(first.id)} would come first; what listings flatter is taken off in the draws.`,
  ];
}

/** The middle and the 10–90 % range: `59 min (40–83 min)`. */
function range({ p10, median, p90 }: Band, shown: (value: number) => string): string {
  const [low, high] = [shown(p10), shown(p90)];
  if (low === high) return shown(median);
  const unitOf = (text: string) => text.replace(/^[-\d.,]+/, '');
  const lowText = unitOf(low) === unitOf(high) ? low.slice(0, low.length - unitOf(low).length) : low;
  return `${shown(median)} (${lowText}–${high})`;
}
