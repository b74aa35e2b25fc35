import type { CandidateModel } from '../../simulate/candidate-model.js';
import { holdDraw, holdEffortAt } from '../../simulate/hold.js';
import { type BusDraw, busDraw, movingVoltageV } from '../../simulate/motor-point.js';
import { MoveTrack } from '../../simulate/move-track.js';
import { playSwitchedMove } from '../../simulate/switched-move.js';
import type { Cue } from '../../study/show.js';

/** Intervals of a move that are looked at, each in its middle: enough to tell springs apart. */
const intervals = 3;

/** Draw of all drives at their own bus while they hold a position, idle electronics left out. */
export function holdDrawW(model: CandidateModel, position: number): number {
  if (model.unpoweredHold) return 0;
  const draw: BusDraw = { powerW: 0, currentA: 0 };
  holdDraw(model, holdEffortAt(model, position), draw);
  return powerOfW(model, draw);
}

/** Mean draw of all drives at their own bus over a move as written. */
export function moveDrawW(model: CandidateModel, cue: Cue): number {
  return model.switched ? switchedDrawW(model, cue) : positionedDrawW(model, cue);
}

function positionedDrawW(model: CandidateModel, cue: Cue): number {
  const track = new MoveTrack(model, cue, 2 * intervals + 1);
  const draw: BusDraw = { powerW: 0, currentA: 0 };
  let sumW = 0;
  for (let i = 1; i < track.count; i += 2) {
    const { currentA, voltageV } = track.evaluate(i, 1);
    busDraw(model, currentA, voltageV, draw);
    sumW += powerOfW(model, draw);
  }
  return sumW / intervals;
}

/** A switched drive takes its own time; what it then draws is spread over the cue. */
function switchedDrawW(model: CandidateModel, cue: Cue): number {
  const move = playSwitchedMove(model, cue, intervals);
  if (move.stuckAt !== null) return Number.POSITIVE_INFINITY;
  const draw: BusDraw = { powerW: 0, currentA: 0 };
  let energyJ = 0;
  move.points.forEach(({ currentA, speed }, i) => {
    busDraw(model, currentA, movingVoltageV(model, currentA, speed), draw);
    energyJ += powerOfW(model, draw) * move.durationsS[i]!;
  });
  return energyJ / cue.durationS;
}

const powerOfW = ({ bus, driveCount }: CandidateModel, draw: BusDraw): number =>
  driveCount * (draw.powerW + draw.currentA * bus.nominalV);
