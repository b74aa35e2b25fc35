import { driveParameters } from '../../drives/drive-parameters.js';
import type { DriveType } from '../../drives/drive-type.js';
import { driveTypes } from '../../drives/registry.js';
import { fall } from '../../physics/fall.js';
import { type CouplingParameters, driveEffortAtRest, driveEffortPushing } from '../../physics/linkage.js';
import type { Candidate, Study } from '../../study/study.js';
import { bodyMassKg, costMoney, driveCountOf } from '../burdens.js';
import { busOf } from '../bus.js';
import { prepareCandidate } from '../candidate.js';
import type { CandidateModel } from '../candidate-model.js';
import { isSure, positionFailures } from '../failures.js';
import { holdCorrectionRatio, lockingClass, unpoweredHoldHonoured } from '../hold.js';
import { checkLinkage } from '../linkage-check.js';
import { featureMassKg, heatBounceFraction, loadOf } from '../mechanics.js';
import { regulatorHeadroomV } from '../pack-model.js';
import { leastShakenEfficiency, staysUnpowered } from '../power-cut.js';
import { crushDistanceM, pushAt } from '../push.js';
import { startUpCurrentA } from '../start-up.js';
import { thermalOf } from '../thermal-model.js';
import { largestMargin } from '../torque-margin.js';
import {
  type CueGeometry,
  cueGeometry,
  holdPositions,
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

/** Steps of the fall: five digits with open leads, three with joined ones. */
const fallSteps = 12;

const lockingCodes = { 'does-not-hold': 0, 'holds-at-rest': 1, 'holds-when-shaken': 2 } as const;

/** Computes all outcomes of one candidate, draw after draw, from a study whose numbers are changed in between. */
export class CandidateKernel {
  private readonly type: DriveType;
  private readonly coupling: CouplingParameters;
  private readonly loopGeometry: CueGeometry;
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
  private readonly highestHold: number;
  private readonly firstHold: number;
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
    this.loopGeometry = cueGeometry(model, study.show.loop);
    this.heldPoses = [...leadInGeometry.poses, ...this.loopGeometry.poses].filter(({ held }) => held);
    this.range = rangeGeometry(model);
    this.leadIn = emptyCueLoads(study.show.leadIn.length);
    this.loop = emptyCueLoads(study.show.loop.length);
    this.leadInKernel = new CueKernel(leadInGeometry, this.leadIn);
    this.loopKernel = new CueKernel(this.loopGeometry, this.loop);
    this.runDown = new QuickRunDown(study.show.leadIn.length, study.show.loop.length);
    this.heat = new QuickHeat(study.show.loop.length);
    const holds = holdPositions(study.show, model.range.highest);
    this.highestHold = holds.highest;
    this.firstHold = holds.first;
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
    const model = this.draw(study, candidate);
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
    const margin = this.effortMargin(model);
    set('torqueMarginRatio', margin);
    set('holdEffortRatio', this.largestHold(model) / drive.stallEffort);
    set('locking', this.lockingCode);
    this.setHands(model, study, candidate, set);
    set('startUpCurrentA', startUpCurrentA(model, this.type, packDraw.leadOhm) ?? 0);
    set('bodyMassKg', bodyMassKg(study, candidate) ?? Number.NaN);
    set('featureMassKg', featureMassKg(study, candidate.sheet) ?? Number.NaN);
    set('cost', costMoney(study, candidate) ?? Number.NaN);
    set('reworkTimeS', candidate.sheet.reworkTimeS ?? Number.NaN);
    set('efficiencyClipped', drive.impliedEfficiency > candidate.typical.forwardEfficiencyCeiling ? 1 : 0);
    const slack = coupling.kind === 'spool' && this.lowestStatic < 0;
    const possible = moves && holds && this.linkagePossible && this.positionsPossible && !slack;
    set('feasible', possible ? 1 : 0);
  }

  private lockingCode = 0;

  /** The model of this draw; positions and lever arms stay as they are. */
  private draw(study: Study, candidate: Candidate): CandidateModel {
    const { sheet, typical } = candidate;
    const { model, type, coupling } = this;
    model.bus = busOf(study.pack, sheet);
    model.drive = driveParameters(type, sheet, typical, model.bus.nominalV);
    model.load = loadOf(study, sheet);
    model.driveCount = driveCountOf(study, candidate);
    this.state.load(model, study.air.temperatureK);
    const largest = sheet.backdrivesAtEffort === null ? 0 : this.largestHold(model);
    const locking = lockingClass(
      model.drive,
      type.locksByCalculation,
      sheet.backdrivesAtEffort,
      largest,
      model.load.bounceFraction,
    );
    this.lockingCode = lockingCodes[locking];
    model.unpoweredHold = !sheet.poweredAtHold && unpoweredHoldHonoured(locking, study.carrier.worn);
    model.holdCorrectionRatio = holdCorrectionRatio(model.drive, sheet);
    model.shakeRatio = sheet.shakeRatio;
    model.backdrivesAtEffort = sheet.backdrivesAtEffort;
    model.coupling = coupling;
    return model;
  }

  private largestHold(model: CandidateModel): number {
    let largest = 0;
    for (const pose of this.heldPoses) {
      const still = this.state.still(model, pose.position, pose.cosine, pose.sine);
      largest = Math.max(largest, Math.abs(driveEffortAtRest(still, pose.ratio, model.coupling)));
    }
    return largest;
  }

  private lowestStatic = 0;

  /** Smallest share of effort left over the range, walking and gust included; notes the lowest static effort. */
  private effortMargin(model: CandidateModel): number {
    const { load, drive, bus, coupling } = model;
    const { range, state } = this;
    const available =
      drive.forwardEfficiency *
      drive.speedConstant *
      (bus.weakV / drive.resistanceOhm - drive.noLoadCurrentA);
    const either = load.frictionEffort + load.gustEffort;
    let margin = largestMargin;
    this.lowestStatic = Number.POSITIVE_INFINITY;
    for (let i = 0; i < rangePointCount; i++) {
      const gravity = state.gravity(range.cosines[i]!, range.sines[i]!);
      const still = state.still(model, range.positions[i]!, range.cosines[i]!, range.sines[i]!);
      const bounce = Math.abs(gravity) * load.bounceFraction;
      const peak = Math.max(still + bounce + either, bounce + either - still);
      const needed = Math.abs(driveEffortPushing(peak, range.ratios[i]!, coupling));
      if (available / needed < margin) margin = available / needed;
      if (still < this.lowestStatic) this.lowestStatic = still;
    }
    return margin;
  }

  /** Winding above the air if the first hold were held for ever; Infinity when it never settles. */
  private settledHoldRise(model: CandidateModel, thermal: ReturnType<typeof thermalOf>): number {
    if (model.unpoweredHold) return 0;
    const index = this.loopGeometry.cues.findIndex((cue) => cue.action === 'hold');
    if (index < 0) return 0;
    const coolW = this.loop.coolHeatsW[index]!;
    const slopeWPerK = (this.loop.warmHeatsW[index]! - coolW) / (warmRiseK - coolRiseK);
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
    const stays = staysUnpowered(model, this.highestHold, study.carrier.worn);
    const shorted = candidate.sheet.shortsWhenOff;
    const falling = stays
      ? null
      : fall(
          load,
          coupling,
          {
            speedConstant: drive.speedConstant,
            noLoadCurrentA: drive.noLoadCurrentA,
            backwardEfficiency: Math.max(leastShakenEfficiency, drive.backwardEfficiency),
            resistanceOhm: drive.resistanceOhm,
            rotorInertia: drive.rotorInertia,
            shorted,
          },
          this.highestHold,
          study.feature.lowerStopPosition,
          fallSteps,
        );
    set('fallS', falling === null ? Number.NaN : falling.fallS);
    set('tipSpeedMPerS', falling === null ? Number.NaN : falling.stopSpeed * load.lengthM);
    set('fallEnergyJ', falling === null ? 0 : 0.5 * load.inertia * falling.stopSpeed ** 2);
    set(
      'crushForceN',
      (coupling.driveCount * this.range.largestRatio * drive.stallEffort) / crushDistanceM(load),
    );
    const push = pushAt(model, this.firstHold, this.lockingCode > 0);
    set(
      'pushForceN',
      push.downN === null || push.upN === null ? Number.POSITIVE_INFINITY : Math.min(push.downN, push.upN),
    );
  }
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
