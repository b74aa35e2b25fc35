import {
  missingStallCurrentA,
  motorFromRatedPoint,
  motorFromStall,
  rotorInertia,
  stallEffortOf,
} from '../physics/dc-motor.js';
import type { DriveType } from './drive-type.js';
import { figuresAtVoltage } from './rated-figures.js';
import type { DriveSheet, Motion, RatedFigures, TypicalFigures } from './sheet.js';

/**
 * Numbers of one drive seen from its output: all that moving, holding, falling and heating need.
 * `speedConstant` K in V·s/rad or V·s/m, which is also N·m/A or N/A before gear losses.
 */
export interface DriveParameters {
  motion: Motion;
  ratedVoltageV: number;
  noLoadSpeed: number;
  resistanceOhm: number;
  speedConstant: number;
  noLoadCurrentA: number;
  stallCurrentA: number;
  /** After the ceiling on efficiency or the stated gear efficiency. */
  stallEffort: number;
  /** As the sheet says, or as the rated point implies. */
  listedStallEffort: number;
  /** Forward efficiency that the sheet's figures imply, before the ceiling. */
  impliedEfficiency: number;
  /** From motor current to effort: never more than the listing implies. */
  forwardEfficiency: number;
  /** Of the gears alone, which backward efficiency follows: as stated, else the forward efficiency. */
  gearEfficiency: number;
  backwardEfficiency: number;
  backwardEfficiencyStatic: number;
  backwardEfficiencyShaken: number;
  /** Rotor inertia seen at the output: kg·m² or kg. */
  rotorInertia: number;
  mechanicalTimeConstantS: number;
  /** Pulse period over the winding's electrical time constant: 1/(f·τ). */
  pulseRatio: number;
  /** Whether the motor sees pulses of full voltage (position control) or the steady bus (switched). */
  pulsed: boolean;
  holdFrictionFraction: number;
  idleCurrentA: number;
}

/** Figures that the sheet left blank and the motor rules filled in. */
export interface FilledFigures {
  noLoadCurrentA: boolean;
  stallCurrentA: boolean;
}

/** Which figures of a sheet `driveParameters` has to fill in. */
export function filledFigures(sheet: DriveSheet, busVoltageV: number): FilledFigures {
  const figures = figuresAtVoltage(sheet, busVoltageV);
  const fromRatedPoint = usesRatedPoint(figures);
  return {
    noLoadCurrentA: figures.noLoadCurrentA === null,
    stallCurrentA: fromRatedPoint ? figures.ratedCurrentA === null : figures.stallCurrentA === null,
  };
}

/** A rated point replaces stall figures only where the stall effort is missing. */
function usesRatedPoint(figures: RatedFigures): boolean {
  return figures.stallEffort === null && figures.ratedEffort !== null && figures.ratedSpeed !== null;
}

/**
 * How near running free and running loaded may come to each other. Figures of one voltage cannot cross, but each is
 * drawn on its own, and rows at two voltages may meet between them: a crossing would turn resistance or motor constant
 * negative, and close to it both are as good as unknown. From experience, no published source: a gearbox that takes
 * more than nine tenths of its loaded current to turn itself, or a rated point within a twentieth of the no-load
 * speed, says nothing about the motor.
 */
const nearest = { noLoadShareOfLoadedCurrent: 0.9, ratedShareOfNoLoadSpeed: 0.95 };

/**
 * The figures with crossings taken out, the same for single figures and for draws: the no-load current no more than
 * 0.9 of the loaded current (less friction than listed, but some left), the rated speed no more than 0.95 of the
 * no-load speed (a stall effort of twenty times the rated one at most).
 */
export function uncrossed(figures: RatedFigures): RatedFigures {
  const { noLoadCurrentA, ratedSpeed, noLoadSpeed } = figures;
  const loadedCurrentA = (usesRatedPoint(figures) ? figures.ratedCurrentA : null) ?? figures.stallCurrentA;
  const mostNoLoadA = nearest.noLoadShareOfLoadedCurrent * (loadedCurrentA ?? Number.POSITIVE_INFINITY);
  const mostRatedSpeed = nearest.ratedShareOfNoLoadSpeed * noLoadSpeed;
  const currentCrosses = noLoadCurrentA !== null && noLoadCurrentA > mostNoLoadA;
  const speedCrosses = ratedSpeed !== null && ratedSpeed > mostRatedSpeed;
  if (!currentCrosses && !speedCrosses) return figures;
  return {
    ...figures,
    noLoadCurrentA: currentCrosses ? mostNoLoadA : noLoadCurrentA,
    ratedSpeed: speedCrosses ? mostRatedSpeed : ratedSpeed,
  };
}

/**
 * No-load current, stall current and stall effort, gaps filled.
 * With i = I_0/I_s typical of the type: I_0 = i·I_s, and I_s from stall power at typical efficiency. (M5, M6)
 */
function completeFigures(figures: RatedFigures, typical: TypicalFigures) {
  const ratio = typical.noLoadCurrentRatio;
  const voltageV = figures.ratedVoltageV;
  const speed = figures.noLoadSpeed;
  if (usesRatedPoint(figures)) {
    const ratedSpeed = figures.ratedSpeed!;
    const slip = speed - ratedSpeed;
    const stallEffort = (figures.ratedEffort! * speed) / slip;
    const ratedCurrentA = figures.ratedCurrentA;
    if (ratedCurrentA !== null) {
      // I_0 = i·I_s put into the line through (w_1, I_1) and (w_0, I_0) gives I_s in closed form.
      const stallIfBlankA = (ratedCurrentA * speed) / (slip + ratio * ratedSpeed);
      const noLoadCurrentA = figures.noLoadCurrentA ?? ratio * stallIfBlankA;
      const motor = motorFromRatedPoint(
        voltageV,
        speed,
        noLoadCurrentA,
        ratedSpeed,
        ratedCurrentA,
        figures.ratedEffort!,
      );
      return { motor, noLoadCurrentA, stallEffort };
    }
    return fromStall(figures, stallEffort, typical);
  }
  return fromStall(figures, figures.stallEffort!, typical);
}

function fromStall(figures: RatedFigures, stallEffort: number, typical: TypicalFigures) {
  const ratio = typical.noLoadCurrentRatio;
  const stallCurrentA = figures.stallCurrentA ?? stallCurrentIfBlankA(figures, stallEffort, typical);
  const noLoadCurrentA = figures.noLoadCurrentA ?? ratio * stallCurrentA;
  const motor = motorFromStall(
    figures.ratedVoltageV,
    figures.noLoadSpeed,
    noLoadCurrentA,
    stallCurrentA,
    stallEffort,
  );
  return { motor, noLoadCurrentA, stallEffort };
}

/** Stall current that gives the typical efficiency, with the no-load current given or a usual share of it. */
function stallCurrentIfBlankA(figures: RatedFigures, stallEffort: number, typical: TypicalFigures): number {
  const { noLoadSpeed, ratedVoltageV, noLoadCurrentA } = figures;
  const efficiency = typical.forwardEfficiency;
  return noLoadCurrentA === null
    ? missingStallCurrentA(stallEffort, noLoadSpeed, efficiency, ratedVoltageV, typical.noLoadCurrentRatio)
    : stallCurrentForA(stallEffort * noLoadSpeed, noLoadCurrentA, efficiency, ratedVoltageV);
}

/**
 * Stall current at which stall effort, speed and no-load current agree with an efficiency. (M5 solved for I_s)
 * @param effortSpeedW stall effort × no-load speed
 */
export function stallCurrentForA(
  effortSpeedW: number,
  noLoadCurrentA: number,
  efficiency: number,
  voltageV: number,
): number {
  // η = T_s·w_0·I_s/(V·(I_s − I_0)²)
  const half = noLoadCurrentA + effortSpeedW / (2 * efficiency * voltageV);
  return half + Math.sqrt(half * half - noLoadCurrentA * noLoadCurrentA);
}

/**
 * The motor and its gears as seen from the output, from a sheet with gaps. (M5–M8)
 *
 * An implied efficiency above the type's ceiling is lowered to it by lowering the stall effort; the
 * current stays, because a flattering listing exaggerates effort. A stated gear efficiency stands instead of the usual
 * one and of the ceiling. It can lower the stall effort, never raise it over the listing, because no maker lists less
 * than the drive does; how badly the gears hold back follows the stated one all the same.
 * @param busVoltageV nominal voltage of the drive's own bus, used where the sheet lists several voltages
 */
export function driveParameters(
  type: DriveType,
  sheet: DriveSheet,
  typical: TypicalFigures,
  busVoltageV: number,
): DriveParameters {
  const figures = uncrossed(figuresAtVoltage(sheet, busVoltageV));
  const stated = sheet.gearEfficiency;
  const {
    motor,
    noLoadCurrentA,
    stallEffort: listedStallEffort,
  } = completeFigures(figures, stated === null ? typical : { ...typical, forwardEfficiency: stated });
  const impliedEfficiency = motor.forwardEfficiency;
  const forwardEfficiency = Math.min(impliedEfficiency, stated ?? typical.forwardEfficiencyCeiling);
  const gearEfficiency = stated ?? forwardEfficiency;
  const backward = backwardEfficiencies(type, sheet, typical, gearEfficiency);
  return {
    motion: type.motion,
    ratedVoltageV: figures.ratedVoltageV,
    noLoadSpeed: figures.noLoadSpeed,
    resistanceOhm: motor.resistanceOhm,
    speedConstant: motor.speedConstant,
    noLoadCurrentA,
    stallCurrentA: motor.stallCurrentA,
    stallEffort: stallEffortOf({ ...motor, forwardEfficiency }),
    listedStallEffort,
    impliedEfficiency,
    forwardEfficiency,
    gearEfficiency,
    backwardEfficiency: backward.running,
    backwardEfficiencyStatic: backward.standing,
    backwardEfficiencyShaken: backward.shaken,
    rotorInertia: rotorInertia(sheet.mechanicalTimeConstantS, motor.speedConstant, motor.resistanceOhm),
    mechanicalTimeConstantS: sheet.mechanicalTimeConstantS,
    pulseRatio: 1 / (sheet.pulseFrequencyHz * sheet.electricalTimeConstantS),
    pulsed: sheet.control === 'position',
    holdFrictionFraction: typical.holdFrictionFraction,
    idleCurrentA: sheet.idleCurrentA,
  };
}

/** A stated backward efficiency decides, then geometry, then the equal-friction rule of the type. (M7, M8) */
function backwardEfficiencies(
  type: DriveType,
  sheet: DriveSheet,
  typical: TypicalFigures,
  forwardEfficiency: number,
) {
  if (sheet.backwardEfficiency !== null) {
    return type.backwardAsStated(sheet.backwardEfficiency, sheet, typical);
  }
  return type.geometry(sheet, typical) ?? type.backward(forwardEfficiency, sheet, typical);
}
