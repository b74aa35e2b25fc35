import { speedRatio, speedRatioSlope } from '../../physics/linkage.js';
import { lawAcceleration, lawPosition, lawVelocity } from '../../physics/motion-law.js';
import type { Cue } from '../../study/show.js';
import type { CandidateModel } from '../candidate-model.js';

/** Intervals of a move, and points on it: both ends and the middle of each interval. */
export const intervalCount = 8;
export const pointCount = 2 * intervalCount + 1;

/** Points over the whole range for the effort margin. */
export const rangePointCount = 17;

/** A move cue as it is before any draw: everything that does not depend on an uncertain number. */
export interface MoveGeometry {
  cueIndex: number;
  durationS: number;
  direction: number;
  travel: number;
  /** Position, its cosine and sine, speed ratio and slope, velocity and acceleration at `pointCount` points. */
  positions: Float64Array;
  cosines: Float64Array;
  sines: Float64Array;
  ratios: Float64Array;
  slopes: Float64Array;
  velocities: Float64Array;
  accelerations: Float64Array;
}

/** A pose: the holds of a show at one position share it. */
export interface PoseGeometry {
  position: number;
  cosine: number;
  sine: number;
  ratio: number;
  /** Whether a hold cue stands here; else only a switched move waits here. */
  held: boolean;
}

/** A cue list prepared for being played again and again. */
export interface CueGeometry {
  cues: readonly Cue[];
  moves: MoveGeometry[];
  poses: PoseGeometry[];
  /** For each cue: index of its move, or of the pose it holds; −1 for rests. */
  indexes: Int32Array;
  /** Pose at which a switched move ends, by cue. */
  endPoses: Int32Array;
}

/** Prepare one list of cues for a coupling that does not change between draws. */
export function cueGeometry(model: CandidateModel, cues: readonly Cue[]): CueGeometry {
  const moves: MoveGeometry[] = [];
  const poses: PoseGeometry[] = [];
  const poseAt = (position: number): number => {
    const known = poses.findIndex((pose) => pose.position === position);
    if (known >= 0) return known;
    const ratio = speedRatio(model.coupling, position);
    poses.push({ position, cosine: Math.cos(position), sine: Math.sin(position), ratio, held: false });
    return poses.length - 1;
  };
  const indexes = new Int32Array(cues.length).fill(-1);
  const endPoses = new Int32Array(cues.length).fill(-1);
  cues.forEach((cue, cueIndex) => {
    if (cue.action === 'move') {
      indexes[cueIndex] = moves.length;
      endPoses[cueIndex] = poseAt(cue.toPosition);
      moves.push(moveGeometry(model, cue, cueIndex));
    } else if (cue.action === 'hold') {
      indexes[cueIndex] = poseAt(cue.fromPosition);
      poses[indexes[cueIndex]!]!.held = true;
    }
  });
  return { cues, moves, poses, indexes, endPoses };
}

function moveGeometry(model: CandidateModel, cue: Cue, cueIndex: number): MoveGeometry {
  const numbers = () => new Float64Array(pointCount);
  const travel = cue.toPosition - cue.fromPosition;
  const move: MoveGeometry = {
    cueIndex,
    durationS: cue.durationS,
    direction: Math.sign(travel) || 1,
    travel,
    positions: numbers(),
    cosines: numbers(),
    sines: numbers(),
    ratios: numbers(),
    slopes: numbers(),
    velocities: numbers(),
    accelerations: numbers(),
  };
  for (let i = 0; i < pointCount; i++) {
    const time = i / (pointCount - 1);
    // A switched drive is sampled evenly over its travel, a position-controlled one evenly over time.
    const share = model.switched ? time : lawPosition(cue.law, time);
    const position = cue.fromPosition + travel * share;
    move.positions[i] = position;
    move.cosines[i] = Math.cos(position);
    move.sines[i] = Math.sin(position);
    move.ratios[i] = speedRatio(model.coupling, position);
    move.slopes[i] = speedRatioSlope(model.coupling, position);
    move.velocities[i] = (travel * lawVelocity(cue.law, time)) / cue.durationS;
    move.accelerations[i] = (travel * lawAcceleration(cue.law, time)) / cue.durationS ** 2;
  }
  return move;
}

/** The range of all cues at even points, for the effort margin and the crush force. */
export interface RangeGeometry {
  positions: Float64Array;
  cosines: Float64Array;
  sines: Float64Array;
  ratios: Float64Array;
  largestRatio: number;
}

export function rangeGeometry(model: CandidateModel): RangeGeometry {
  const numbers = () => new Float64Array(rangePointCount);
  const range: RangeGeometry = {
    positions: numbers(),
    cosines: numbers(),
    sines: numbers(),
    ratios: numbers(),
    largestRatio: 0,
  };
  for (let i = 0; i < rangePointCount; i++) {
    const share = i / (rangePointCount - 1);
    const position = model.range.lowest + (model.range.highest - model.range.lowest) * share;
    range.positions[i] = position;
    range.cosines[i] = Math.cos(position);
    range.sines[i] = Math.sin(position);
    range.ratios[i] = speedRatio(model.coupling, position);
    range.largestRatio = Math.max(range.largestRatio, Math.abs(range.ratios[i]!));
  }
  return range;
}
