import type { Cue } from '../study/show.js';
import type { Load } from '../study/supply.js';
import { type CandidateModel, usableVoltageFraction } from './candidate-model.js';
import { holdDraw, holdEffortAt, holdMotorCurrentA } from './hold.js';
import { emptySamples, type LoopSamples, sampleKinds } from './loop-samples.js';
import { type BusDraw, busDraw, drivesCurrentA, movingVoltageV } from './motor-point.js';
import { MoveTrack } from './move-track.js';
import { playSwitchedMove, switchedPoint } from './switched-move.js';

/** How finely moves are sampled and how hard the stretch is searched. */
export interface Fineness {
  /** Intervals of a move, each played with the load in its middle. */
  intervals: number;
  /** Points per interval at which the move must be possible; even, so that one lies in the middle. */
  checks: number;
  stretchGrowth: number;
  stretchHalvings: number;
}

/** For nominal results: 60 intervals checked at 241 points; thirds of the move fall on ends of intervals. */
export const fine: Fineness = { intervals: 60, checks: 4, stretchGrowth: 1.05, stretchHalvings: 36 };

/** For swings of many inputs, where one run is compared with another of the same fineness. */
export const coarse: Fineness = { intervals: 18, checks: 2, stretchGrowth: 1.1, stretchHalvings: 20 };

/** A cue list played by one candidate. */
export interface PlayedCues {
  samples: LoopSamples;
  /** Largest pack current at nominal voltage, also at the ends of intervals. */
  peakCurrentA: number;
  /** Played over written time per move cue; null where it cannot move. */
  stretches: (number | null)[];
  /** Position at which a move is impossible; null when all can be made. */
  stuckAt: number | null;
  /** Holds the weakest bus cannot carry with all friction against the drive. */
  failedHolds: { cue: Cue; voltageV: number; limitV: number }[];
  /** Holds the regulator cannot feed: current needed by all drives. */
  starvedHolds: { cue: Cue; currentA: number }[];
}

/** Load of everything beside the drives during a cue: I = powerW/V + currentA. (M17) */
export function loadsDraw(
  loads: readonly Load[],
  lightsFraction: number,
  moving: boolean,
  packNominalV: number,
  into: BusDraw,
): void {
  into.powerW = 0;
  into.currentA = 0;
  for (const load of loads) {
    const whileMoving = moving ? 1 : 0;
    const level =
      load.drawnWhen === 'always' ? 1 : load.drawnWhen === 'lights' ? lightsFraction : whileMoving;
    const powerW = load.powerW * level;
    if (load.converterEfficiency === null) into.currentA += powerW / (load.voltageV ?? packNominalV);
    else into.powerW += powerW / load.converterEfficiency;
    into.powerW += load.idlePowerW;
  }
}

/** Plays cues into samples. Keeps its buffers, so that one player serves many plays of the same cue list. */
export class CuePlayer {
  private readonly draw: BusDraw = { powerW: 0, currentA: 0 };
  private readonly beside: BusDraw = { powerW: 0, currentA: 0 };
  private readonly played: PlayedCues;

  constructor(
    private readonly model: CandidateModel,
    private readonly cues: readonly Cue[],
    private readonly loads: readonly Load[],
    private readonly fineness: Fineness,
  ) {
    // A switched move may be followed by a wait at its end, hence one more sample than intervals.
    const samples = emptySamples(cues.length * (fineness.intervals + 1));
    this.played = {
      samples,
      peakCurrentA: 0,
      stretches: [],
      stuckAt: null,
      failedHolds: [],
      starvedHolds: [],
    };
  }

  play(): PlayedCues {
    this.cues.forEach((cue, index) => {
      const moving = cue.action === 'move';
      loadsDraw(this.loads, cue.lightsFraction, moving, this.model.bus.packNominalV, this.beside);
      if (moving && this.model.switched) this.playSwitched(cue, index);
      else if (moving) this.playPositioned(cue, index);
      else if (cue.action === 'hold') this.playHold(cue, index, cue.durationS, true);
      else this.playRest(cue, index);
    });
    return this.played;
  }

  private playPositioned(cue: Cue, cueIndex: number): void {
    const { model, played, fineness } = this;
    const { intervals, checks } = fineness;
    const track = new MoveTrack(model, cue, intervals * checks + 1);
    const stretch = track.stretch(fineness.stretchGrowth, fineness.stretchHalvings);
    played.stretches.push(stretch);
    if (stretch === null) {
      played.stuckAt ??= track.worstPosition();
      return;
    }
    const durationS = (cue.durationS * stretch) / intervals;
    for (let check = 0; check < track.count; check++) {
      const point = track.evaluate(check, stretch);
      busDraw(model, point.currentA, point.voltageV, this.draw);
      if (check % checks === checks / 2) {
        this.add(cueIndex, sampleKinds.move, durationS, track.positions[check]!, point);
      } else {
        this.notePeak(model.drive.idleCurrentA);
      }
    }
  }

  private playSwitched(cue: Cue, cueIndex: number): void {
    const { model, played, fineness } = this;
    const move = playSwitchedMove(model, cue, fineness.intervals);
    if (move.stuckAt !== null) {
      played.stretches.push(null);
      played.stuckAt ??= move.stuckAt;
      return;
    }
    played.stretches.push(move.playedS > 0 ? move.playedS / cue.durationS : 1);
    for (const end of [cue.fromPosition, cue.toPosition]) {
      const point = switchedPoint(model, end, Math.sign(cue.toPosition - cue.fromPosition) || 1);
      busDraw(model, point.currentA, movingVoltageV(model, point.currentA, point.speed), this.draw);
      this.notePeak(model.drive.idleCurrentA);
    }
    move.points.forEach((point, i) => {
      busDraw(model, point.currentA, movingVoltageV(model, point.currentA, point.speed), this.draw);
      this.add(cueIndex, sampleKinds.move, move.durationsS[i]!, move.positions[i]!, point);
    });
    const waitS = cue.durationS - move.playedS;
    if (waitS > 0) {
      const ended: Cue = { ...cue, fromPosition: cue.toPosition };
      loadsDraw(this.loads, cue.lightsFraction, false, model.bus.packNominalV, this.beside);
      this.playHold(ended, cueIndex, waitS, false);
    }
  }

  private playHold(cue: Cue, cueIndex: number, durationS: number, judged: boolean): void {
    const { model, played, draw } = this;
    const position = cue.fromPosition;
    const effort = holdEffortAt(model, position);
    if (model.unpoweredHold) {
      draw.powerW = 0;
      draw.currentA = 0;
      this.add(
        cueIndex,
        sampleKinds.hold,
        durationS,
        position,
        { effort: Math.abs(effort), speed: 0, currentA: 0 },
        0,
      );
      return;
    }
    const currentA = holdDraw(model, effort, draw);
    if (judged) {
      const voltageV = holdMotorCurrentA(model.drive, effort, 1) * model.drive.resistanceOhm;
      const limitV = usableVoltageFraction * model.bus.weakV;
      if (!(voltageV <= limitV)) played.failedHolds.push({ cue, voltageV, limitV });
      const needA = drivesCurrentA(model, draw, model.drive.idleCurrentA, model.bus.nominalV);
      if (needA > model.bus.regulatorLimitA) played.starvedHolds.push({ cue, currentA: needA });
    }
    this.add(cueIndex, sampleKinds.hold, durationS, position, {
      effort: Math.abs(effort),
      speed: 0,
      currentA,
    });
  }

  private playRest(cue: Cue, cueIndex: number): void {
    this.draw.powerW = 0;
    this.draw.currentA = 0;
    const idleA = this.model.poweredAtRest ? this.model.drive.idleCurrentA : 0;
    const still = { effort: 0, speed: 0, currentA: 0 };
    this.add(cueIndex, sampleKinds.rest, cue.durationS, cue.fromPosition, still, idleA);
  }

  /** Pack current at nominal voltage between the middles of intervals, where a law may jump to its peak. */
  private notePeak(idleA: number): void {
    const { model, draw, beside } = this;
    const { bus } = model;
    const driveA = drivesCurrentA(model, draw, idleA, bus.nominalV);
    const besideA = beside.powerW / bus.packNominalV + beside.currentA;
    const upstreamA = bus.regulated
      ? (bus.nominalV * Math.max(0, driveA)) / (bus.regulatorEfficiency * bus.packNominalV)
      : driveA;
    this.played.peakCurrentA = Math.max(this.played.peakCurrentA, besideA + upstreamA);
  }

  /** Append a sample: drives, idle electronics and everything beside them, referred to the pack. (M17) */
  private add(
    cueIndex: number,
    kind: number,
    durationS: number,
    position: number,
    point: { effort: number; speed: number; currentA: number },
    idleA = this.model.drive.idleCurrentA,
  ): void {
    const { samples } = this.played;
    const { model, draw, beside } = this;
    const k = samples.count++;
    samples.totalS += durationS;
    samples.cueIndexes[k] = cueIndex;
    samples.kinds[k] = kind;
    samples.durationsS[k] = durationS;
    samples.positions[k] = position;
    samples.efforts[k] = point.effort;
    samples.speeds[k] = point.speed;
    samples.motorCurrentsA[k] = point.currentA;
    samples.drivePowersW[k] = draw.powerW;
    samples.driveCurrentsA[k] = draw.currentA;
    samples.idleCurrentsA[k] = idleA;
    this.notePeak(idleA);
    const { bus, driveCount } = model;
    if (bus.regulated) {
      const busA = Math.max(0, drivesCurrentA(model, draw, idleA, bus.nominalV));
      samples.packPowersW[k] = beside.powerW + (bus.nominalV * busA) / bus.regulatorEfficiency;
      samples.packCurrentsA[k] = beside.currentA;
    } else {
      samples.packPowersW[k] = beside.powerW + driveCount * draw.powerW;
      samples.packCurrentsA[k] = beside.currentA + driveCount * (draw.currentA + idleA);
    }
  }
}
