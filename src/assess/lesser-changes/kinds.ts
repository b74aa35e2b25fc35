import { anchoredCoil, assistSpring } from './assist-springs.js';
import { dimmerLights } from './dimmer-lights.js';
import { holdLatch } from './hold-latch.js';
import type { LesserChangeId } from './lesser-change.js';
import { massShaved } from './mass-shaved.js';
import type { ChangeKind } from './proposal.js';
import { restOnStop } from './rest-on-stop.js';
import { packsInParallel, packsInTurn } from './second-pack.js';
import { muchSlowerMoves, slowerMoves } from './slower-moves.js';

/**
 * Every kind of lesser change, one line each; the compiler names one that is missing. In a pair the earlier one is
 * made first, so that a spring is designed for the feature that is left.
 */
export const changeKinds: Record<LesserChangeId, ChangeKind> = {
  'mass-shaved': massShaved,
  'rest-on-stop': restOnStop,
  'hold-latch': holdLatch,
  'slower-moves': slowerMoves,
  'much-slower-moves': muchSlowerMoves,
  'dimmer-lights': dimmerLights,
  'packs-in-turn': packsInTurn,
  'packs-in-parallel': packsInParallel,
  'assist-spring': assistSpring,
  'anchored-coil': anchoredCoil,
};
