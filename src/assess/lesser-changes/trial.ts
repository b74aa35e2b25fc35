import type { CandidateRun } from '../../simulate/outcome.js';
import type { Candidate, Study } from '../../study/study.js';
import type { Judged } from '../criterion-values.js';
import { limitsOf, passesAll } from '../limits.js';
import { criterionOutcomes, scoreOf } from '../scores.js';
import { figuresOf, gainBetween, perHundredGrams } from './figures-of.js';
import type { ChangeFigures, LesserChange } from './lesser-change.js';
import type { Proposal, Setup, Tried } from './proposal.js';
import { costingAs } from './unknown-price.js';

/** Whether a drive passes every limit, and its score on the user's own weights, 0…1. */
export interface Standing {
  passes: boolean | null;
  score: number;
}

/** What the lesser changes need from outside: the simulation and the judgement of one drive. */
export interface ChangeTools {
  simulate(study: Study, candidate: Candidate): CandidateRun;
  judge(judged: Judged): Standing;
}

/** The judgement by limits and criteria as the study states them, from nominal figures. */
export function standingOf(judged: Judged): Standing {
  return { passes: passesAll(limitsOf(judged)), score: scoreOf(criterionOutcomes(judged)) };
}

/** The drive of today before any change, simulated and judged once. */
export interface StartingPoint {
  tried: Tried;
  figures: ChangeFigures;
  standing: Standing;
}

/** Simulate and judge the drive of today as it is. */
export function startingPoint(setup: Setup, tools: ChangeTools): StartingPoint {
  const tried = { ...setup, run: tools.simulate(setup.study, setup.candidate) };
  const standing = tools.judge(tried);
  const figures = figuresOf(tried, setup.study.packsCarriedCount, standing.score);
  return { tried, figures, standing };
}

/**
 * Simulate and judge one proposal, its burden counted.
 * @param costLeftOut whether its score leaves out what it costs; a limit on cost is judged all the same
 */
export function tryOut(
  proposal: Proposal,
  start: StartingPoint,
  tools: ChangeTools,
  costLeftOut: boolean,
): LesserChange {
  const { setup, burden } = proposal;
  const unchanged = setup.study === start.tried.study && setup.candidate === start.tried.candidate;
  const simulated = unchanged ? start.tried.run : tools.simulate(setup.study, setup.candidate);
  const tried: Tried = { ...setup, run: withProposal(simulated, proposal) };
  const { passes, score: scoreWithCost } = tools.judge(tried);
  const score = costLeftOut
    ? tools.judge({ ...tried, run: costingAs(tried.run, start.tried.run) }).score
    : scoreWithCost;
  const after = figuresOf(tried, proposal.packsInTurnCount, score);
  const gain = gainBetween(start.figures, after);
  return {
    id: proposal.parts.length === 1 ? proposal.parts[0]! : 'pair',
    parts: proposal.parts,
    title: proposal.title,
    actions: proposal.actions,
    settings: proposal.settings,
    burden,
    sideEffects: proposal.sideEffects(start.tried, tried),
    after,
    gain,
    gainPerHundredGrams: perHundredGrams(gain, burden.massKg),
    passes,
  };
}

/**
 * The run of a proposal's setup, put right, with mass, money and work of the change counted with those of the drive;
 * what is not known stays unknown.
 */
export function withProposal(simulated: CandidateRun, proposal: Proposal): CandidateRun {
  const { burden, addedBodyMassKg } = proposal;
  const run = proposal.corrected(simulated);
  const { nominal } = run;
  const plus = (figure: number | null, added: number | null): number | null =>
    figure === null || added === null ? null : figure + added;
  return {
    ...run,
    nominal: {
      ...nominal,
      bodyMassKg: plus(nominal.bodyMassKg, addedBodyMassKg),
      cost: plus(nominal.cost, burden.costMoney),
      reworkTimeS: plus(nominal.reworkTimeS, burden.workTimeS),
    },
  };
}
