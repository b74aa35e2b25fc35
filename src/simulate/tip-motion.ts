import { speedRatio } from '../physics/linkage.js';
import type { Candidate, Study } from '../study/study.js';
import { prepareCandidate } from './candidate.js';
import type { CandidateModel } from './candidate-model.js';
import { type LoopSamples, sampleKinds } from './loop-samples.js';
import { CuePlayer, fine } from './play-loop.js';
import { crushDistanceM } from './push.js';

/** How fast the tip is driven, and what the feature then carries. SI; of one feature. */
export interface TipMotion {
  /** Fastest moment of the show as it is played; null where a move cannot be made. */
  showSpeedMPerS: number | null;
  /** No-load speed on a full pack where the drive turns the feature fastest: what a wrong command can reach at most. */
  freeSpeedMPerS: number | null;
  /** What the moving feature weighs against being stopped at its tip: energy is half of it times speed squared. */
  tipMassKg: number;
  /** How far from the hinge a hand is crushed hardest; null on a slide. */
  crushDistanceM: number | null;
}

/** Speed of the tip in the show and at worst, for one candidate. */
export function tipMotion(study: Study, candidate: Candidate): TipMotion {
  const { model } = prepareCandidate(study, candidate);
  const { load } = model;
  const played = [study.show.leadIn, study.show.loop].map((cues) =>
    new CuePlayer(model, cues, study.loads, fine).play(),
  );
  const moves = played.every(({ stuckAt }) => stuckAt === null);
  const fastest = Math.max(...played.map(({ samples }) => fastestMove(model, samples)));
  return {
    showSpeedMPerS: moves ? fastest * load.lengthM : null,
    freeSpeedMPerS: freeSpeedMPerS(model),
    tipMassKg: load.inertia / load.lengthM ** 2,
    crushDistanceM: load.isHinge ? crushDistanceM(load) : null,
  };
}

/** Largest speed of the feature in rad/s or m/s; 0 where nothing moves. */
function fastestMove({ coupling }: CandidateModel, samples: LoopSamples): number {
  let fastest = 0;
  for (let k = 0; k < samples.count; k++) {
    if (samples.kinds[k] !== sampleKinds.move) continue;
    fastest = Math.max(fastest, samples.speeds[k]! / Math.abs(speedRatio(coupling, samples.positions[k]!)));
  }
  return fastest;
}

/** (V − I_0·R)/K over the smallest speed ratio of the cue range; null at a dead centre. (M5, M4) */
function freeSpeedMPerS({ drive, bus, coupling, range, load }: CandidateModel): number | null {
  const motorV = bus.highestV - drive.noLoadCurrentA * drive.resistanceOhm;
  const points = 50;
  const ratios = Array.from({ length: points + 1 }, (_, i) =>
    Math.abs(speedRatio(coupling, range.lowest + ((range.highest - range.lowest) * i) / points)),
  );
  const speed = (Math.max(0, motorV) / drive.speedConstant / Math.min(...ratios)) * load.lengthM;
  return Number.isFinite(speed) ? speed : null;
}
