import { driveParameters } from '../../drives/drive-parameters.js';
import type { DriveType } from '../../drives/drive-type.js';
import { driveTypes } from '../../drives/registry.js';
import { type CouplingParameters, driveEffortPushing } from '../../physics/linkage.js';
import type { Cue } from '../../study/show.js';
import type { Candidate, Study } from '../../study/study.js';
import { bodyMassKg, costMoney, driveCountOf } from '../burdens.js';
import { busOf } from '../bus.js';
import { prepareCandidate } from '../candidate.js';
import type { CandidateModel } from '../candidate-model.js';
import { isSure, positionFailures, restsStay } from '../failures.js';
import { firstHoldPosition, heldPositions, restPositions } from '../held-poses.js';
import {
  holdCorrectionRatio,
  type LargestHold,
  lockingClass,
  noHold,
  takeHold,
  unpoweredHoldHonoured,
} from '../hold.js';
import { checkLinkage } from '../linkage-check.js';
import { featureMassKg, heatBounceFraction, loadOf } from '../mechanics.js';
import type { LockingClass } from '../outcome.js';
import { regulatorHeadroomV } from '../pack-model.js';
import { givesWay, landingEnergyJ } from '../power-cut.js';
import { crushDistanceM, pushAt } from '../push.js';
import { startUpCurrentA } from '../start-up.js';
import { thermalOf } from '../thermal-model.js';
import { largestMargin } from '../torque-margin.js';
import {
  cueGeometry,
  type PoseGeometry,
  type RangeGeometry,
  rangeGeometry,
  rangePointCount,
} from './cue-geometry.js';
import { type CueLoads, emptyCueLoads } from './cue-loads.js';
import { coolRiseK, DriveState, warmRiseK } from './drive-state.js';
import { outcomeIndex } from './ensemble.js';
import { CueKernel } from './play-cues.js';
import { QuickHeat } from './quick-heat.js';
import type { PackDraw } from './quick-run-down.js';
import { QuickRunDown } from './quick-run-down.js';

/** Steps of the fall: joined leads let it sink for so long that where it is slowest takes more of them. */
const fallSteps = { open: 12, shorted: 48 };

const lockingCodes = { 'does-not-hold': 0, 'holds-at-rest': 1, 'holds-when-shaken': 2 } as const;

/** Computes all outcomes of one candidate, draw after draw, from a study whose numbers are changed in between. */
export class CandidateKernel {
  private readonly type: DriveType;
  private readonly coupling: CouplingParameters;
  private readonly heldPoses: PoseGeometry[];
  private readonly range: RangeGeometry;
  private readonly leadIn: CueLoads;
  private readonly loop: CueLoads;
  private readonly leadInKernel: CueKernel;
  private readonly loopKernel: CueKernel;
  private readonly runDown: QuickRunDown;
  private readonly heat: QuickHeat;
  private readonly state = new DriveState();
  private readonly model: CandidateModel;
  private readonly linkagePossible: boolean;
  private readonly positionsPossible: boolean;
  /** Every held position, highest first. */
  private readonly held: number[];
  private readonly firstHold: number;
  /** Where the list is that has the first hold cue, and which cue of it that is; null where nothing is held. */
  private readonly endlessHold: { loads: CueLoads; index: number } | null;
  private readonly rests: number[];
  private readonly heatBounce: number;

  /**
   * @param study the nominal study
   * @param candidate one of its candidates
   */
  constructor(study: Study, candidate: Candidate) {
    const { model } = prepareCandidate(study, candidate);
    this.model = model;
    this.type = driveTypes[candidate.kind];
    this.coupling = model.coupling;
    const leadInGeometry = cueGeometry(model, study.show.leadIn);
    const loopGeometry = cueGeometry(model, study.show.loop);
    this.heldPoses = [...leadInGeometry.poses, ...loopGeometry.poses].filter(({ held }) => held);
    this.range = rangeGeometry(model);
    this.leadIn = emptyCueLoads(study.show.leadIn.length);
    this.loop = emptyCueLoads(study.show.loop.length);
    this.leadInKernel = new CueKernel(leadInGeometry, this.leadIn);
    this.loopKernel = new CueKernel(loopGeometry, this.loop);
    this.runDown = new QuickRunDown(study.show.leadIn.length, study.show.loop.length);
    this.heat = new QuickHeat(study.show.loop.length);
    this.held = heldPositions(study.show, model.range.highest);
    this.firstHold = firstHoldPosition(study.show) ?? model.range.highest;
    this.rests = restPositions(study);
    this.endlessHold = firstHoldIn(study.show.leadIn, this.leadIn) ?? firstHoldIn(study.show.loop, this.loop);
    this.heatBounce = heatBounceFraction(study.carrier.activity);
    this.linkagePossible = !checkLinkage(model, candidate.sheet, study.feature).failures.some(isSure);
    this.positionsPossible = !positionFailures(study, model).some(isSure);
  }

  /**
   * Compute one draw.
   * @param study with the drawn numbers in place
   * @param candidate of that study, likewise
   * @param packDraw the pack in this draw, common to all candidates
   * @param out a column per outcome
   * @param draw index into the columns
   */
  run(study: Study, candidate: Candidate, packDraw: PackDraw, out: Float64Array[], draw: number): void {
    const { model, locking, largestHold } = this.draw(study, candidate);
    const { drive, bus, coupling } = model;
    const { state, loop, leadIn } = this;
    const airK = study.air.temperatureK;
    const before = this.leadInKernel.play(model, state, study.loads, this.heatBounce);
    const leadInMoves = before.moves;
    const leadInHolds = before.holds;
    const leadInPeakA = before.peakCurrentA;
    const leadInWrittenS = before.writtenMoveS;
    const leadInStretchedS = before.stretchedMoveS;
    const played = this.loopKernel.play(model, state, study.loads, this.heatBounce);
    const moves = leadInMoves && played.moves;
    const holds = leadInHolds && played.holds;
    const set = (name: keyof typeof outcomeIndex, value: number): void => {
      out[outcomeIndex[name]]![draw] = value;
    };
    const thermal = thermalOf(candidate.sheet, study.air);
    if (moves) {
      packDraw.lowestBusV = Math.max(
        packDraw.packLowestBusV,
        bus.regulated ? bus.nominalV + regulatorHeadroomV : Number.NEGATIVE_INFINITY,
      );
      this.runDown.run(packDraw, leadIn, loop);
      this.heat.solve(thermal, loop);
      let chargeC = 0;
      for (let c = 0; c < loop.count; c++) {
        chargeC += (loop.powersW[c]! / bus.packNominalV + loop.currentsA[c]!) * loop.durationsS[c]!;
      }
      const writtenS = leadInWrittenS + played.writtenMoveS;
      set('runtimeS', this.runDown.runtimeS);
      set('warningS', this.runDown.warningS);
      set('loopS', loop.totalS);
      set('cueFidelityRatio', writtenS > 0 ? writtenS / (leadInStretchedS + played.stretchedMoveS) : 1);
      set('meanPackCurrentA', chargeC / loop.totalS);
      set('peakPackCurrentA', Math.max(leadInPeakA, played.peakCurrentA));
      set('windingTemperatureK', airK + this.heat.windingRiseK);
      set('caseTemperatureK', airK + this.heat.caseRiseK);
    } else {
      for (const name of movingOutcomes) set(name, Number.NaN);
    }
    const holdA = played.holdS > 0 ? played.holdChargeC / played.holdS : 0;
    set('holdPackCurrentA', holdA);
    set('holdPowerW', holdA * bus.packNominalV);
    set('settledHoldWindingK', airK + this.settledHoldRise(model, thermal));
    const efforts = this.efforts(model);
    set('torqueMarginRatio', efforts.marginRatio);
    set('holdEffortRatio', largestHold.stillEffort / drive.stallEffort);
    set('locking', lockingCodes[locking]);
    this.setHands(model, study, candidate, set);
    set('startUpCurrentA', startUpCurrentA(model, this.type, packDraw.leadOhm) ?? 0);
    set('bodyMassKg', bodyMassKg(study, candidate) ?? Number.NaN);
    set('featureMassKg', featureMassKg(study, candidate.sheet) ?? Number.NaN);
    set('cost', costMoney(study, candidate) ?? Number.NaN);
    set('reworkTimeS', candidate.sheet.reworkTimeS ?? Number.NaN);
    set('efficiencyClipped', drive.impliedEfficiency > candidate.typical.forwardEfficiencyCeiling ? 1 : 0);
    const slack = coupling.kind === 'spool' && efforts.lowestStatic < 0;
    const rests = restsStay(model, this.rests, study.carrier.worn);
    const possible = moves && holds && rests && this.linkagePossible && this.positionsPossible && !slack;
    set('feasible', possible ? 1 : 0);
  }

  /** The model of this draw, how it locks, and the most it holds; positions and lever arms stay as they are. */
  private draw(study: Study, candidate: Candidate): DrawnModel {
    const { sheet, typical } = candidate;
    const { model, type, coupling } = this;
    model.bus = busOf(study.pack, sheet);
    model.drive = driveParameters(type, sheet, typical, model.bus.nominalV);
    model.load = loadOf(study, sheet);
    model.driveCount = driveCountOf(study, candidate);
    this.state.load(model, study.air.temperatureK);
    const largestHold = this.largestHold(model);
    const { backdrivesAtEffort } = sheet;
    const locking = lockingClass(model.drive, type.locksByCalculation, backdrivesAtEffort, largestHold);
    model.unpoweredHold = !sheet.poweredAtHold && unpoweredHoldHonoured(locking, study.carrier.worn);
    model.holdCorrectionRatio = holdCorrectionRatio(model.drive, sheet);
    model.shakeRatio = sheet.shakeRatio;
    model.backdrivesAtEffort = backdrivesAtEffort;
    model.coupling = coupling;
    return { model, locking, largestHold };
  }

  private largestHold(model: CandidateModel): LargestHold {
    const largest = noHold();
    for (const { position, cosine, sine, ratio } of this.heldPoses) {
      const still = this.state.still(model, position, cosine, sine);
      takeHold(largest, model, still, this.state.gravity(cosine, sine), ratio);
    }
    return largest;
  }

  /** Smallest share of effort left over the range, walking and gust included, and the lowest static effort. */
  private efforts(model: CandidateModel): { marginRatio: number; lowestStatic: number } {
    const { load, drive, bus, coupling } = model;
    const { range, state } = this;
    const available =
      drive.forwardEfficiency *
      drive.speedConstant *
      (bus.weakV / drive.resistanceOhm - drive.noLoadCurrentA);
    const either = load.frictionEffort + load.gustEffort;
    let marginRatio = largestMargin;
    let lowestStatic = Number.POSITIVE_INFINITY;
    for (let i = 0; i < rangePointCount; i++) {
      const gravity = state.gravity(range.cosines[i]!, range.sines[i]!);
      const still = state.still(model, range.positions[i]!, range.cosines[i]!, range.sines[i]!);
      const bounce = Math.abs(gravity) * load.bounceFraction;
      const peak = Math.max(still + bounce + either, bounce + either - still);
      const needed = Math.abs(driveEffortPushing(peak, range.ratios[i]!, coupling));
      if (available / needed < marginRatio) marginRatio = available / needed;
      if (still < lowestStatic) lowestStatic = still;
    }
    return { marginRatio, lowestStatic };
  }

  /** Winding above the air if the first hold were held for ever; Infinity when it never settles. */
  private settledHoldRise(model: CandidateModel, thermal: ReturnType<typeof thermalOf>): number {
    if (model.unpoweredHold) return 0;
    if (this.endlessHold === null) return 0;
    const { loads, index } = this.endlessHold;
    const coolW = loads.coolHeatsW[index]!;
    const slopeWPerK = (loads.warmHeatsW[index]! - coolW) / (warmRiseK - coolRiseK);
    const throughK = thermal.windingToCaseKPerW + thermal.caseToAirKPerW;
    const rise = (throughK * (coolW - slopeWPerK * coolRiseK)) / (1 - throughK * slopeWPerK);
    return throughK * slopeWPerK < 1 ? rise : Number.POSITIVE_INFINITY;
  }

  /** Fall, push and crush. */
  private setHands(
    model: CandidateModel,
    study: Study,
    candidate: Candidate,
    set: (name: keyof typeof outcomeIndex, value: number) => void,
  ): void {
    const { drive, load, coupling } = model;
    const shorted = candidate.sheet.shortsWhenOff;
    const steps = fallSteps[shorted ? 'shorted' : 'open'];
    const landing = givesWay(model, this.held, study.carrier.worn, shorted, steps)?.landing ?? null;
    set('fallS', landing === null ? Number.NaN : landing.fallS);
    set('tipSpeedMPerS', landing === null ? Number.NaN : landing.stopSpeed * load.lengthM);
    set('fallEnergyJ', landingEnergyJ(model, landing));
    set(
      'crushForceN',
      (coupling.driveCount * this.range.largestRatio * drive.stallEffort) / crushDistanceM(load),
    );
    const push = pushAt(model, this.firstHold);
    set(
      'pushForceN',
      push.downN === null || push.upN === null ? Number.POSITIVE_INFINITY : Math.min(push.downN, push.upN),
    );
  }
}

/** What one draw makes of a candidate before anything is played. */
interface DrawnModel {
  model: CandidateModel;
  locking: LockingClass;
  largestHold: LargestHold;
}

/** The first hold of a list, by its place in the list's loads. */
function firstHoldIn(cues: readonly Cue[], loads: CueLoads): { loads: CueLoads; index: number } | null {
  const index = cues.findIndex(({ action }) => action === 'hold');
  return index < 0 ? null : { loads, index };
}

/** Outcomes that do not occur when a move cannot be made. */
const movingOutcomes = [
  'runtimeS',
  'warningS',
  'loopS',
  'cueFidelityRatio',
  'meanPackCurrentA',
  'peakPackCurrentA',
  'windingTemperatureK',
  'caseTemperatureK',
] as const;
