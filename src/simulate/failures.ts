import { staticEffort } from '../physics/load.js';
import { formatValue } from '../quantity/format.js';
import type { Study } from '../study/study.js';
import type { CandidateModel } from './candidate-model.js';
import { restPositions } from './held-poses.js';
import type { Failure } from './outcome.js';
import type { PlayedCues } from './play-loop.js';
import { pulledTowards, staysUnpowered } from './power-cut.js';
import type { EffortSearch } from './torque-margin.js';

/** Positions closer than this count as the same end switch: half a degree, or half a millimetre. */
const sameEndSwitch = { hinge: Math.PI / 360, slide: 5e-4 };

/** A position as the cue list writes it. */
const positionText = (study: Study, position: number): string =>
  formatValue(position, study.feature.kind === 'hinge' ? 'deg' : 'mm');

/** Whether it fails whatever a blank turns out to be. */
export const isSure = ({ missing }: Failure): boolean => missing === undefined;

/** In what ways a candidate cannot do the job at all, linkage apart. */
export function candidateFailures(
  study: Study,
  model: CandidateModel,
  leadIn: PlayedCues,
  loop: PlayedCues,
  efforts: EffortSearch,
): Failure[] {
  return [
    ...moveFailures(study, model, leadIn, loop),
    ...holdFailures(study, model, leadIn, loop),
    ...restFailures(study, model),
    ...positionFailures(study, model),
    ...cordFailures(study, model, efforts),
  ];
}

function moveFailures(study: Study, model: CandidateModel, leadIn: PlayedCues, loop: PlayedCues): Failure[] {
  const stuckAt = leadIn.stuckAt ?? loop.stuckAt;
  if (stuckAt === null) return [];
  const volts = formatValue(model.bus.weakV, 'V');
  const where = positionText(study, stuckAt);
  const reason = model.switched
    ? `it stalls at ${where}: the load needs all the current the bus can drive through the motor`
    : `it cannot move at ${where} from the weakest bus (${volts}), however slowly`;
  return [{ code: 'moves', position: stuckAt, reason, value: null, limit: null }];
}

function holdFailures(study: Study, model: CandidateModel, leadIn: PlayedCues, loop: PlayedCues): Failure[] {
  const failures: Failure[] = [];
  const weak = [...leadIn.failedHolds, ...loop.failedHolds].sort((p, q) => q.voltageV - p.voltageV)[0];
  if (weak !== undefined) {
    failures.push({
      code: 'holds',
      position: weak.cue.fromPosition,
      reason:
        `to hold ${positionText(study, weak.cue.fromPosition)} with friction against it the motor needs ` +
        `${formatValue(weak.voltageV, 'V')}; the weakest bus leaves ${formatValue(weak.limitV, 'V')}`,
      value: weak.voltageV,
      limit: weak.limitV,
    });
  }
  const starved = [...leadIn.starvedHolds, ...loop.starvedHolds].sort((p, q) => q.currentA - p.currentA)[0];
  if (starved !== undefined) {
    failures.push({
      code: 'regulator',
      position: starved.cue.fromPosition,
      reason:
        `holding ${positionText(study, starved.cue.fromPosition)} takes ` +
        `${formatValue(starved.currentA, 'A')}, more than the regulator's ` +
        `${formatValue(model.bus.regulatorLimitA, 'A')}`,
      value: starved.currentA,
      limit: model.bus.regulatorLimitA,
    });
  }
  return failures;
}

/** Whether the feature stays at every rest of the show by itself: a rest has no power to hold with. */
export const restsStay = (model: CandidateModel, rests: readonly number[], worn: boolean): boolean =>
  rests.every((position) => staysUnpowered(model, position, worn));

/**
 * A rest is free because a stop bears the feature, and a stop bears only what lies on it: at a stop that the feature
 * is pulled away from it would leave as soon as the power is off, unless this drive keeps it there.
 */
function restFailures(study: Study, model: CandidateModel): Failure[] {
  const { worn } = study.carrier;
  const left = restPositions(study).find((position) => !restsStay(model, [position], worn));
  if (left === undefined) return [];
  const effort = Math.abs(staticEffort(model.load, left));
  const away = pulledTowards(model, left) === 'lower' ? 'down' : 'up';
  return [
    {
      code: 'holds',
      position: left,
      reason:
        `nothing bears the feature where it rests at ${positionText(study, left)}: ` +
        `${formatValue(effort, model.load.isHinge ? 'N·m' : 'N')} pull it ${away}, away from the stop; ` +
        'write the cue as hold, or let a latch bear it',
      value: effort,
      limit: 0,
    },
  ];
}

/**
 * A switched drive without feedback knows two positions only: its end switches. (M16)
 * Where nobody said whether it has feedback, the failure names what to fill in.
 */
export function positionFailures(study: Study, model: CandidateModel): Failure[] {
  if (!model.switched || model.positionFeedback === true) return [];
  const { lowest, highest } = model.range;
  const same = sameEndSwitch[study.feature.kind];
  const between = [...study.show.leadIn, ...study.show.loop]
    .flatMap((cue) => [cue.fromPosition, cue.toPosition])
    .find((position) => position - lowest > same && highest - position > same);
  if (between === undefined) return [];
  return [
    {
      code: 'positions',
      position: between,
      reason:
        `the cue list stops at ${positionText(study, between)}; without position feedback the drive stops only ` +
        `at its end switches, ${positionText(study, lowest)} and ${positionText(study, highest)}`,
      value: null,
      limit: null,
      ...(model.positionFeedback === null ? { missing: 'position_feedback' } : {}),
    },
  ];
}

/** A cord pulls and never pushes. (M3) */
function cordFailures(study: Study, model: CandidateModel, efforts: EffortSearch): Failure[] {
  if (model.coupling.kind !== 'spool' || efforts.lowestStatic >= 0) return [];
  return [
    {
      code: 'cord',
      position: efforts.lowestAt,
      reason: `at ${positionText(study, efforts.lowestAt)} the cord would have to push with ${formatValue(
        -efforts.lowestStatic,
        'N',
      )}`,
      value: efforts.lowestStatic,
      limit: 0,
    },
  ];
}
