import { motorSpeed } from '../physics/dc-motor.js';
import { driveEffortMoving, speedRatio } from '../physics/linkage.js';
import { movingEffort, staticEffort } from '../physics/load.js';
import type { Cue } from '../study/show.js';
import type { CandidateModel } from './candidate-model.js';
import { movingCurrentA } from './motor-point.js';

/** A switched move at one position. */
export interface SwitchedPoint {
  effort: number;
  /** Speed of the drive; not positive when it cannot move there. */
  speed: number;
  currentA: number;
  /** Speed of the feature coordinate. */
  velocity: number;
}

/** Rounds of putting the drag at the found speed back into the balance; drag is small. */
const dragRounds = 6;

/**
 * Quasi-static speed of a switched drive at a position: I(T)·R + K·w equals the bus of a half-full pack. (M16)
 */
export function switchedPoint(model: CandidateModel, position: number, direction: number): SwitchedPoint {
  const { load, drive, bus } = model;
  const ratio = speedRatio(model.coupling, position);
  const along = Math.sign(ratio) * direction;
  const stillEffort = staticEffort(load, position);
  const rounds = load.dragCoefficient > 0 ? dragRounds : 1;
  let velocity = 0;
  let effort = 0;
  let currentA = 0;
  let speed = 0;
  for (let round = 0; round < rounds; round++) {
    const loadEffort = movingEffort(load, stillEffort, velocity * direction, 0, direction);
    effort = driveEffortMoving(loadEffort, direction, ratio, model.coupling) * along;
    currentA = movingCurrentA(model, effort, 0);
    speed = motorSpeed(bus.middleV, currentA, drive.resistanceOhm, drive.speedConstant);
    const found = Math.max(0, speed / Math.abs(ratio));
    // Halfway steps keep the iteration from swinging when the drag is large.
    velocity = round === 0 ? found : (velocity + found) / 2;
  }
  return { effort, speed, currentA, velocity: speed / Math.abs(ratio) };
}

/** A switched move played over its travel. */
export interface SwitchedMove {
  points: SwitchedPoint[];
  positions: number[];
  durationsS: number[];
  playedS: number;
  /** Position at which it cannot move; null when it can everywhere. */
  stuckAt: number | null;
}

/** Play a switched move in equal steps of travel. */
export function playSwitchedMove(model: CandidateModel, cue: Cue, intervals: number): SwitchedMove {
  const travel = cue.toPosition - cue.fromPosition;
  const direction = Math.sign(travel) || 1;
  const move: SwitchedMove = { points: [], positions: [], durationsS: [], playedS: 0, stuckAt: null };
  if (travel === 0) return move;
  for (const end of [cue.fromPosition, cue.toPosition]) {
    if (!(switchedPoint(model, end, direction).speed > 0)) move.stuckAt = end;
  }
  for (let i = 0; i < intervals; i++) {
    const position = cue.fromPosition + (travel * (i + 0.5)) / intervals;
    const point = switchedPoint(model, position, direction);
    if (!(point.speed > 0)) {
      move.stuckAt = position;
      return move;
    }
    const durationS = Math.abs(travel) / intervals / point.velocity;
    move.points.push(point);
    move.positions.push(position);
    move.durationsS.push(durationS);
    move.playedS += durationS;
  }
  return move;
}
