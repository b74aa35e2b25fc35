import { driveParameters } from '../../src/drives/drive-parameters.js';
import { driveTypes } from '../../src/drives/registry.js';
import type { CouplingKind, DriveKind, DriveSheet } from '../../src/drives/sheet.js';
import { cellChemistryIds } from '../../src/physics/cell-tables.js';
import { driveEffortPushing, speedRatio } from '../../src/physics/linkage.js';
import { peakEffort } from '../../src/physics/load.js';
import { motionLaws } from '../../src/physics/motion-law.js';
import { busOf } from '../../src/simulate/bus.js';
import { largestHold } from '../../src/simulate/hold.js';
import { couplingOf, cueRange, givenPivots, loadOf } from '../../src/simulate/mechanics.js';
import type { Activity, AssistSpring } from '../../src/study/feature.js';
import type { Cue } from '../../src/study/show.js';
import type { Study } from '../../src/study/study.js';
import type { DrawnWhen, Load } from '../../src/study/supply.js';
import { plainCandidate, plainCue, plainPack, plainStudy, plainTypical } from './plain-study.js';
import { Draws } from './random-numbers.js';

/** What the pack of a random study is driven towards. */
export type PackTask = 'ordinary' | 'near-collapse' | 'peak-ends-it';

/** A random but sensible study with one candidate; the pack's capacity is still to be set. */
export function randomStudy(seed: number): { study: Study; task: PackTask } {
  const draws = new Draws(seed);
  const task: PackTask = draws.chance(1 / 3) ? draws.pick(['near-collapse', 'peak-ends-it']) : 'ordinary';
  const onHinge = draws.chance(0.6);
  const kind = draws.pick<DriveKind>(['position-servo', 'worm-gearmotor', 'screw-actuator']);
  const coupling = randomCoupling(draws, onHinge, kind);
  const base = plainStudy();
  const massKg = draws.scaled(0.05, 3);
  const balanceDistanceM = draws.between(0.05, 0.6);
  const study: Study = {
    ...base,
    feature: {
      ...base.feature,
      kind: onHinge ? 'hinge' : 'slide',
      featureCount: draws.whole(1, 3),
      massKg,
      balanceDistanceM: onHinge ? balanceDistanceM : 0,
      tipDistanceM: onHinge ? balanceDistanceM * draws.between(1.4, 2.5) : 0,
      inclineRad: draws.between(0.5, Math.PI / 2),
      lowerStopPosition: onHinge ? -0.6 : -0.01,
      upperStopPosition: onHinge ? 1.2 : 0.5,
      frictionEffort: draws.chance(0.5) ? draws.between(0, 0.1) : 0,
      panelAreaM2: draws.chance(0.3) ? draws.between(0, 0.05) : 0,
    },
    packTemperatureK: draws.between(273, 308),
    loads: Array.from({ length: draws.whole(0, 3) }, (_, i) => randomLoad(draws, i)),
    show: { leadIn: [], loop: randomLoop(draws, onHinge) },
  };
  study.pack = plainPack(draws.pick(cellChemistryIds), { seriesCount: draws.whole(2, 4) });
  study.candidates = [plainCandidate(kind, { ...randomSheet(draws, study, kind, coupling) })];
  return { study, task };
}

/**
 * The same study with what a plain one lacks, each by chance: a lead-in, an assist spring, a carrier that walks and
 * leans, several drives to the feature, an effort at which the drive was measured to yield, joined leads.
 */
export function fullerStudy(seed: number): { study: Study; task: PackTask } {
  const { study, task } = randomStudy(seed);
  const draws = new Draws(seed * 13 + 5);
  const { feature, show } = study;
  const onHinge = feature.kind === 'hinge';
  const weight =
    feature.massKg * 9.80665 * (onHinge ? feature.balanceDistanceM : Math.sin(feature.inclineRad));
  if (draws.chance(0.6)) feature.spring = randomSpring(draws, onHinge, weight);
  if (draws.chance(0.5)) {
    const activity = draws.pick<Activity>(['stand', 'walk', 'brisk', 'dance']);
    // Leaned back so far, the upper poses stand past the vertical.
    study.carrier = { ...study.carrier, worn: true, activity, leanRad: draws.between(-0.3, 1.2) };
  }
  if (draws.chance(0.5)) show.leadIn = randomLeadIn(draws, feature.lowerStopPosition, show.loop, onHinge);
  const candidate = study.candidates[0]!;
  const sheet = { ...candidate.sheet };
  if (draws.chance(0.4)) sheet.drivesPerFeatureCount = draws.whole(2, 3);
  if (draws.chance(0.3)) sheet.shortsWhenOff = true;
  if (draws.chance(0.4)) {
    const coupling = couplingOf(sheet, givenPivots(sheet));
    const { stillEffort } = largestHold({ load: loadOf(study, sheet), coupling }, show);
    sheet.backdrivesAtEffort = stillEffort * draws.between(0.3, 1.6) + 1e-3;
  }
  study.candidates = [{ ...candidate, sheet }];
  return { study, task };
}

function randomSpring(draws: Draws, onHinge: boolean, weight: number): AssistSpring {
  const none = plainStudy().feature.spring;
  const form = draws.pick<AssistSpring['form']>(
    onHinge ? ['constant', 'linear', 'coil'] : ['constant', 'linear'],
  );
  if (form === 'constant') return { ...none, form, constantEffort: weight * draws.between(0.2, 1.8) };
  if (form === 'linear') {
    const [freePosition, way] = onHinge ? [draws.between(0.2, 1.5), 1] : [draws.between(0.1, 0.5), 0.3];
    return { ...none, form, freePosition, stiffness: (weight * draws.between(0.3, 2)) / way };
  }
  const [frameArmM, featureArmM] = [0.1, 0.08];
  const rateNPerM = (weight * draws.between(0.3, 1.5)) / (frameArmM * featureArmM);
  return { ...none, form, frameArmM, featureArmM, rateNPerM, freeLengthM: draws.pick([0, 0.05]) };
}

/** From the lower stop over one held pose to where the loop begins. */
function randomLeadIn(draws: Draws, lowerStop: number, loop: readonly Cue[], onHinge: boolean): Cue[] {
  const held = onHinge ? draws.between(-0.5, 1.1) : draws.between(0, 0.4);
  const move = (name: string, fromPosition: number, toPosition: number): Cue =>
    plainCue({ name, action: 'move', fromPosition, toPosition, durationS: draws.between(3, 12) });
  return [
    move('first', lowerStop, held),
    plainCue({ name: 'greet', fromPosition: held, durationS: draws.between(2, 30) }),
    move('begin', held, loop[0]!.fromPosition),
  ];
}

function randomCoupling(
  draws: Draws,
  onHinge: boolean,
  kind: DriveKind,
): Partial<DriveSheet> & { coupling: CouplingKind } {
  const linear = driveTypes[kind].motion === 'linear';
  if (onHinge && linear) {
    return {
      coupling: 'strut',
      strutFrameArmM: draws.between(0.05, 0.12),
      strutFeatureArmM: draws.between(0.03, 0.06),
      strutLevelAngleRad: draws.between(1.3, 1.8),
      strutSide: draws.pick(['push', 'pull']),
      strokeM: 0.2,
    };
  }
  if (!onHinge && !linear)
    return { coupling: 'spool', couplingEfficiency: 0.95, spoolRadiusM: draws.between(0.01, 0.04) };
  if (draws.chance(0.4))
    return { coupling: 'geared', couplingEfficiency: 0.9, couplingRatio: draws.between(0.7, 4) };
  return { coupling: 'direct' };
}

function randomLoad(draws: Draws, index: number): Load {
  const converter = draws.chance(0.5);
  return {
    id: `load-${index}`,
    label: `load ${index}`,
    powerW: draws.scaled(0.2, 8),
    voltageV: converter ? 12 : 5,
    converterEfficiency: converter ? draws.between(0.75, 0.95) : null,
    idlePowerW: draws.between(0, 0.2),
    drawnWhen: draws.pick<DrawnWhen>(['always', 'lights', 'moving']),
    note: '',
  };
}

/** 3–12 cues of 10–240 s in all that end where they began. */
function randomLoop(draws: Draws, onHinge: boolean): Cue[] {
  const count = draws.whole(3, 12);
  const place = (): number => (onHinge ? draws.between(-0.5, 1.1) : draws.between(0, 0.4));
  const start = place();
  const loop: Cue[] = [];
  let at = start;
  for (let i = 0; i < count - 1; i++) {
    const lightsFraction = draws.pick([0, 0.3, 1]);
    if (i % 2 === 0) {
      const to = place();
      const law = draws.pick(motionLaws);
      loop.push(
        plainCue({
          name: `m${i}`,
          action: 'move',
          fromPosition: at,
          toPosition: to,
          durationS: draws.between(1, 8),
          law,
          lightsFraction,
        }),
      );
      at = to;
    } else {
      loop.push(
        plainCue({ name: `h${i}`, fromPosition: at, durationS: draws.scaled(2, 40), lightsFraction }),
      );
    }
  }
  loop.push(
    plainCue({
      name: 'back',
      action: 'move',
      fromPosition: at,
      toPosition: start,
      durationS: draws.between(1, 8),
    }),
  );
  const wantedS = draws.scaled(10, 240);
  const totalS = loop.reduce((sum, cue) => sum + cue.durationS, 0);
  return loop.map((cue) => ({ ...cue, durationS: (cue.durationS * wantedS) / totalS }));
}

/** A drive a bit stronger and faster than its cues need, so that most studies can be played. */
function randomSheet(
  draws: Draws,
  study: Study,
  kind: DriveKind,
  coupled: Partial<DriveSheet> & { coupling: CouplingKind },
): Partial<DriveSheet> {
  const typical = plainTypical[kind];
  const trial = { ...plainCandidate(kind, coupled).sheet };
  const load = loadOf(study, trial);
  const coupling = couplingOf(trial, givenPivots(trial));
  const range = cueRange(study);
  let effort = 0;
  let ratio = 0;
  for (let i = 0; i <= 20; i++) {
    const position = range.lowest + ((range.highest - range.lowest) * i) / 20;
    const u = speedRatio(coupling, position);
    ratio = Math.max(ratio, Math.abs(u));
    effort = Math.max(effort, Math.abs(driveEffortPushing(peakEffort(load, position), u, coupling)));
  }
  const fastest = Math.max(
    ...study.show.loop.map((cue) => Math.abs(cue.toPosition - cue.fromPosition) / cue.durationS),
  );
  const bus = busOf(study.pack, trial);
  const efficiency = typical.forwardEfficiency * draws.between(0.7, 1.25);
  const stallEffort = effort * draws.between(2.5, 6);
  const noLoadSpeed = fastest * 2 * ratio * draws.between(1.1, 3);
  const stallPowerW = (stallEffort * noLoadSpeed) / efficiency;
  const switched = kind !== 'position-servo' && draws.chance(0.4);
  const sheet: Partial<DriveSheet> = {
    ...coupled,
    ratedVoltageV: bus.nominalV,
    noLoadSpeed,
    stallEffort,
    stallCurrentA: stallPowerW / bus.nominalV / 0.85,
    noLoadCurrentA: null,
    control: switched ? 'switched' : 'position',
    poweredAtHold: kind === 'position-servo' || draws.chance(0.3),
    idleCurrentA: draws.between(0, 0.02),
    pulseFrequencyHz: draws.scaled(50, 20000),
  };
  // Only to make sure that the figures can be a motor at all.
  driveParameters(driveTypes[kind], { ...trial, ...sheet }, typical, bus.nominalV);
  return sheet;
}
