import { driveParameters } from '../drives/drive-parameters.js';
import { driveTypes } from '../drives/registry.js';
import { sheetFindings } from '../drives/sheet-findings.js';
import type { Cue } from '../study/show.js';
import type { Candidate, Study } from '../study/study.js';
import { assumedOf } from './assumed.js';
import { bodyMassKg, costMoney, driveCountOf, fitsSpace, noiseAtOneMetreDb } from './burdens.js';
import { busOf } from './bus.js';
import type { CandidateModel, PreparedCandidate } from './candidate-model.js';
import { candidateFailures } from './failures.js';
import { simulateHeat } from './heat.js';
import { firstHoldPosition, heldPositions } from './held-poses.js';
import {
  holdCorrectionRatio,
  largestHold,
  lockingClass,
  measuredHold,
  unpoweredHoldHonoured,
} from './hold.js';
import { checkLinkage } from './linkage-check.js';
import {
  cueFidelity,
  holdFigures,
  loopEnergy,
  meanCurrentA,
  tenSecondMeanA,
  worstOnShare,
} from './loop-figures.js';
import { measuredHoldFindings } from './measured-hold-findings.js';
import { couplingOf, cueRange, featureMassKg, loadOf, stopsOf } from './mechanics.js';
import type { CandidateRun, NominalOutcome } from './outcome.js';
import { packModel } from './pack-model.js';
import { CuePlayer, coarse, fine, type PlayedCues } from './play-loop.js';
import { powerCut } from './power-cut.js';
import { crushForces, pushAt } from './push.js';
import { runOnPack } from './run-on-pack.js';
import { loopSeries } from './series.js';
import { startUpCurrentA } from './start-up.js';
import { strutPivots } from './strut.js';
import { searchEfforts } from './torque-margin.js';
import { warmFindings } from './warm-check.js';

export type { PreparedCandidate } from './candidate-model.js';

/** Turn a candidate of a study into the plain numbers that the simulation works from. */
export function prepareCandidate(study: Study, candidate: Candidate): PreparedCandidate {
  const { sheet, typical } = candidate;
  const type = driveTypes[candidate.kind];
  const bus = busOf(study.pack, sheet);
  const drive = driveParameters(type, sheet, typical, bus.nominalV);
  const load = loadOf(study, sheet);
  const range = cueRange(study);
  const { pivots, proposed } = strutPivots(study, sheet, load, range);
  const coupling = couplingOf(sheet, pivots);
  const locking = lockingClass(
    drive,
    type.locksByCalculation,
    sheet.backdrivesAtEffort,
    largestHold({ load, coupling }, study.show),
  );
  const model: CandidateModel = {
    load,
    coupling,
    drive,
    bus,
    range,
    stops: stopsOf(study.feature),
    driveCount: driveCountOf(study, candidate),
    switched: sheet.control === 'switched',
    regenerates: sheet.regenerates,
    unpoweredHold: !sheet.poweredAtHold && unpoweredHoldHonoured(locking, study.carrier.worn),
    poweredAtRest: sheet.poweredAtRest,
    positionFeedback: sheet.positionFeedback,
    holdCorrectionRatio: holdCorrectionRatio(drive, sheet),
    shakeRatio: sheet.shakeRatio,
    backdrivesAtEffort: sheet.backdrivesAtEffort,
  };
  const pack = packModel(
    study.pack,
    study.wiring,
    study.packTemperatureK,
    bus.regulated ? bus.nominalV : null,
  );
  return { model, locking, pack, proposedPivots: proposed };
}

/**
 * How thorough a simulation is: `full` for what is reported; `sketch` for comparing many changes of an input with
 * each other, coarser, and without charts and the repeat with a warm winding.
 */
export type Thoroughness = 'full' | 'sketch';

/** What a listing itself says of a candidate, whatever its figures are believed to be. */
export interface Listing extends Pick<CandidateRun, 'findings' | 'assumed'> {
  stallEffort: number;
}

/** What the listing of a candidate cannot mean, and what had to be assumed where it is blank. */
export function listingOf(
  study: Study,
  candidate: Candidate,
  prepared = prepareCandidate(study, candidate),
): Listing {
  const { drive, bus } = prepared.model;
  return {
    findings: [
      ...sheetFindings(driveTypes[candidate.kind], candidate.sheet, candidate.typical, drive, bus.nominalV),
      ...measuredHoldFindings(drive, candidate.sheet),
    ],
    assumed: assumedOf(study, candidate, prepared),
    stallEffort: drive.listedStallEffort,
  };
}

/**
 * What a candidate does with single figures.
 * @param study as read
 * @param believed the same, or what readings leave of it
 * @param candidate of the study as read
 * @param simulate how; in full when left out
 */
export function nominalRun(
  study: Study,
  believed: Study,
  candidate: Candidate,
  simulate = (of: Study, one: Candidate, listing?: Listing) => simulateCandidate(of, one, 'full', listing),
): CandidateRun {
  if (believed === study) return simulate(study, candidate);
  const same = believed.candidates.find(({ id }) => id === candidate.id)!;
  return simulate(believed, same, listingOf(study, candidate));
}

/**
 * Everything that follows for one candidate from the nominal figures of a study.
 * @param listing of the candidate as read, where its figures are no longer those
 */
export function simulateCandidate(
  study: Study,
  candidate: Candidate,
  thoroughness: Thoroughness = 'full',
  listing?: Listing,
): CandidateRun {
  const full = thoroughness === 'full';
  const fineness = full ? fine : coarse;
  const type = driveTypes[candidate.kind];
  const prepared = prepareCandidate(study, candidate);
  const { model, pack } = prepared;
  const { sheet } = candidate;
  const listed = listing ?? listingOf(study, candidate, prepared);
  const leadIn = new CuePlayer(model, study.show.leadIn, study.loads, fineness).play();
  const loop = new CuePlayer(model, study.show.loop, study.loads, fineness).play();
  const stretches = [...leadIn.stretches, ...loop.stretches];
  const linkage = checkLinkage(model, sheet, study.feature);
  const efforts = searchEfforts(model);
  const moves = leadIn.stuckAt === null && loop.stuckAt === null;
  const run = moves ? runOnPack(pack, leadIn.samples, loop.samples, full) : null;
  const heat = simulateHeat(
    study,
    candidate,
    model,
    moves ? loop.samples : null,
    run?.runDown.runtimeS ?? 0,
    full,
  );
  const meanA = moves ? meanCurrentA(loop.samples, model.bus.packNominalV) : null;
  // What is played once still has to get through fuse and protection board.
  const peakA = moves ? Math.max(leadIn.peakCurrentA, loop.peakCurrentA) : null;
  const startA = finite(startUpCurrentA(model, type, pack.leadOhm));
  const nominal: NominalOutcome = {
    runtimeS: run?.runDown.runtimeS ?? null,
    endReason: run?.runDown.endReason ?? null,
    warningS: run?.runDown.warningS ?? null,
    loopS: moves ? loop.samples.totalS : null,
    cueFidelityRatio: moves ? cueFidelity([...study.show.leadIn, ...study.show.loop], stretches) : null,
    stretchRatios: stretches,
    meanPackCurrentA: meanA,
    peakPackCurrentA: peakA,
    ...holdOutcome(model, loop, study.show.loop, measuredHold(model.drive, sheet) !== null),
    locking: prepared.locking,
    ...handsOutcome(study, model, sheet.shortsWhenOff),
    startUpCurrentA: startA,
    ...heat.outcome,
    onShareFraction:
      moves && sheet.onPeriodS !== null ? worstOnShare(leadIn.samples, loop.samples, sheet.onPeriodS) : null,
    bodyMassKg: bodyMassKg(study, candidate),
    featureMassKg: featureMassKg(study, sheet),
    torqueMarginRatio: finite(efforts.marginRatio),
    holdEffortRatio: finite(largestHold(model, study.show).stillEffort / model.drive.stallEffort),
    fits: fitsSpace(study, candidate),
    busVoltageV: model.bus.highestV,
    maximumVoltageV: sheet.maximumVoltageV,
    cost: costMoney(study, candidate),
    reworkTimeS: sheet.reworkTimeS,
    swapTimeS: sheet.swapTimeS,
    noiseDb: noiseAtOneMetreDb(candidate),
    energy: moves ? loopEnergy(model, loop.samples, study.show.loop, study.loads) : null,
  };
  return {
    id: candidate.id,
    motor: { ...motorOutcome(model), listedStallEffort: listed.stallEffort },
    nominal,
    demand: {
      peakCurrentA: peakA,
      tenSecondCurrentA: moves ? tenSecondMeanA(leadIn.samples, loop.samples, model.bus.packNominalV) : null,
      meanCurrentA: meanA,
      startUpCurrentA: startA,
    },
    series: {
      loop: loopSeries(model, loop.samples),
      runDown: run?.series ?? { timesS: [], lowestVoltagesV: [], meanVoltagesV: [], socFractions: [] },
      ...heat.series,
    },
    failures: [...candidateFailures(study, model, leadIn, loop, efforts), ...linkage.failures],
    findings: [
      ...listed.findings,
      ...linkage.findings,
      ...(full ? warmFindings(study, model, loop, heat.outcome.windingTemperatureK) : []),
      ...powerFindings(study, candidate, prepared),
    ],
    assumed: listed.assumed,
  };
}

/** A number that may have become infinite or undefined on the way; such a one is not judged. */
const finite = (value: number | null): number | null =>
  value !== null && Number.isFinite(value) ? value : null;

function motorOutcome({ drive }: CandidateModel): CandidateRun['motor'] {
  return {
    resistanceOhm: drive.resistanceOhm,
    speedConstant: drive.speedConstant,
    noLoadCurrentA: drive.noLoadCurrentA,
    stallCurrentA: drive.stallCurrentA,
    stallEffort: drive.stallEffort,
    listedStallEffort: drive.listedStallEffort,
    forwardEfficiency: drive.forwardEfficiency,
    backwardEfficiency: drive.backwardEfficiency,
    backwardEfficiencyStatic: drive.backwardEfficiencyStatic,
    backwardEfficiencyShaken: drive.backwardEfficiencyShaken,
  };
}

type HoldPart = Pick<
  NominalOutcome,
  | 'holdPackCurrentA'
  | 'holdMotorCurrentA'
  | 'holdPowerW'
  | 'holdCurrentLinearRuleA'
  | 'holdCurrentPulseModelA'
  | 'holdCurrentMeasuredA'
  | 'holdPackCurrentLinearRuleA'
  | 'holdPackCurrentPulseModelA'
  | 'holdCurrentUsed'
>;

function holdOutcome(
  model: CandidateModel,
  loop: PlayedCues,
  cues: readonly Cue[],
  measured: boolean,
): HoldPart {
  const hold = holdFigures(model, loop.samples, cues);
  const pulsed = model.drive.pulsed ? 'pulse-model' : 'direct-current';
  return {
    holdPackCurrentA: hold.packA,
    holdMotorCurrentA: hold.motorA,
    holdPowerW: hold.packA * model.bus.packNominalV,
    holdCurrentLinearRuleA: hold.linearRuleA,
    holdCurrentPulseModelA: hold.pulseModelA,
    ...(measured ? { holdCurrentMeasuredA: hold.correctedA } : {}),
    holdPackCurrentLinearRuleA: hold.packLinearRuleA,
    holdPackCurrentPulseModelA: hold.packPulseModelA,
    holdCurrentUsed: model.unpoweredHold ? 'unpowered' : measured ? 'measured' : pulsed,
  };
}

type HandsPart = Pick<
  NominalOutcome,
  | 'powerCut'
  | 'pushDownN'
  | 'pushUpN'
  | 'unpoweredPushDownN'
  | 'unpoweredPushUpN'
  | 'crushForceN'
  | 'crushForceAtTipN'
>;

/** What a person or a power cut meets: fall, push and crush. */
function handsOutcome(study: Study, model: CandidateModel, shortsWhenOff: boolean): HandsPart {
  const { worn } = study.carrier;
  const held = heldPositions(study.show, model.range.highest);
  const push = pushAt(model, firstHoldPosition(study.show) ?? model.range.highest);
  const crush = crushForces(model);
  return {
    powerCut: {
      ...powerCut(model, held, worn, false),
      decides: shortsWhenOff ? 'shorted' : 'open',
      shorted: powerCut(model, held, worn, true),
    },
    pushDownN: finite(push.downN),
    pushUpN: finite(push.upN),
    unpoweredPushDownN: finite(push.unpoweredDownN),
    unpoweredPushUpN: finite(push.unpoweredUpN),
    crushForceN: finite(crush.nearN),
    crushForceAtTipN: finite(crush.tipN),
  };
}

/** Findings about asking for an unpowered hold. */
function powerFindings(
  study: Study,
  candidate: Candidate,
  prepared: PreparedCandidate,
): CandidateRun['findings'] {
  if (candidate.sheet.poweredAtHold || prepared.model.unpoweredHold) return [];
  const why =
    prepared.locking === 'holds-at-rest'
      ? 'its gears lock at rest but not when shaken, the feature is worn, and the friction of its motor is not relied on'
      : 'it does not lock by calculation and no measured backdrives_at says otherwise';
  return [
    {
      code: 'unpowered-hold-not-honoured',
      severity: 'note',
      field: 'powered_at_hold',
      message: `The power cannot be off while it holds: ${why}. It is computed as powered${
        study.carrier.worn ? '' : ' at every hold'
      }.`,
    },
  ];
}
