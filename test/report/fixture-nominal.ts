import type { DriveKind } from '../../src/drives/sheet.js';
import type { NominalOutcome, PowerCutOutcome } from '../../src/simulate/outcome.js';

export interface Wanted {
  id: string;
  label: string;
  rank: number;
  type?: DriveKind;
}

const runtimesS: Record<string, number | null> = {
  'worm-relay': 10920,
  'screw-strut': 9000,
  'servo-now': 3400,
  'servo-gaps': 5400,
  'worm-quick': null,
};

/** Nominal outcomes of a fixture candidate; the one that cannot move has nulls wherever the loop is needed. */
export function createNominal(
  wanted: Wanted,
  powerCut: PowerCutOutcome,
  shorted: PowerCutOutcome,
): NominalOutcome {
  const isServo = wanted.type === 'position-servo';
  const cannotMove = wanted.id === 'worm-quick';
  const hasGaps = wanted.id === 'servo-gaps';
  const unlessStuck = <T>(value: T): T | null => (cannotMove ? null : value);
  return {
    runtimeS: runtimesS[wanted.id] ?? null,
    endReason: unlessStuck(wanted.id === 'servo-now' ? 'cut-off' : 'reserve'),
    warningS: wanted.id === 'servo-now' ? 2950 : null,
    loopS: unlessStuck(isServo ? 167.6 : 177),
    cueFidelityRatio: unlessStuck(isServo ? 1 : 0.71),
    stretchRatios: [1, 1, 1.4, 2.1, 1, 1, 1].map((ratio) => unlessStuck(ratio)),
    meanPackCurrentA: unlessStuck(isServo ? 0.91 : 0.38),
    peakPackCurrentA: unlessStuck(isServo ? 3.05 : 1.75),
    holdPackCurrentA: isServo ? 0.557 : 0,
    holdMotorCurrentA: isServo ? 1.38 : 0,
    holdPowerW: isServo ? 4.12 : 0,
    holdCurrentLinearRuleA: 1.72,
    holdCurrentPulseModelA: 0.545,
    holdPackCurrentLinearRuleA: 1.73,
    holdPackCurrentPulseModelA: 0.555,
    ...(wanted.id === 'servo-now' ? { holdCurrentMeasuredA: 0.557 } : {}),
    holdCurrentUsed: isServo ? (wanted.id === 'servo-now' ? 'measured' : 'pulse-model') : 'unpowered',
    locking: isServo ? 'does-not-hold' : 'holds-when-shaken',
    powerCut: { ...powerCut, decides: 'open', shorted: isServo ? shorted : powerCut },
    pushDownN: 5.4,
    pushUpN: 11.2,
    unpoweredPushDownN: isServo ? 0 : null,
    unpoweredPushUpN: isServo ? 3.1 : null,
    crushForceN: isServo ? 90 : 412,
    crushForceAtTipN: isServo ? 9 : 41,
    startUpCurrentA: isServo ? 5.1 : 4.4,
    windingTemperatureK: hasGaps ? null : 344.2,
    caseTemperatureK: hasGaps ? null : 315.7,
    settledHoldWindingK: isServo ? null : 287.2,
    settledHoldCaseK: isServo ? null : 287.2,
    thermalRunaway: isServo,
    timeToLimitHoldingS: isServo ? 640 : null,
    onShareFraction: wanted.type === 'screw-actuator' ? 0.31 : null,
    bodyMassKg: hasGaps ? null : isServo ? 0.384 : 0.661,
    featureMassKg: 0.86,
    torqueMarginRatio: wanted.id === 'servo-now' ? 1.12 : cannotMove ? 0.94 : 2.4,
    holdEffortRatio: isServo ? 0.37 : 0.22,
    fits: hasGaps ? null : true,
    busVoltageV: 8.4,
    maximumVoltageV: isServo ? 8.6 : 14,
    cost: isServo ? 0 : 45,
    reworkTimeS: isServo ? 0 : 50400,
    swapTimeS: isServo ? 600 : 900,
    noiseDb: hasGaps ? null : 50,
    energy: unlessStuck({
      drivesMovingJ: isServo ? 96 : 141,
      drivesHoldingJ: isServo ? 519 : 0,
      drivesRestingJ: isServo ? 4 : 0,
      drivesIdleJ: isServo ? 15 : 0,
      loads: [
        { id: 'lamps', label: '12 V lamps in head and neck', energyJ: 331 },
        { id: 'controller', label: 'controller and receiver', energyJ: 97 },
      ],
    }),
  };
}
