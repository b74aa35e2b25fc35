import type { DriveKind, DriveSheet, TypicalFigures } from '../../src/drives/sheet.js';
import type { CellChemistryId } from '../../src/physics/cell-tables.js';
import type { Cue } from '../../src/study/show.js';
import type { Candidate, Study } from '../../src/study/study.js';
import type { Chemistry, Pack } from '../../src/study/supply.js';

/** Everything a sheet may leave blank, blank; figures of an invented small servo. */
export function plainSheet(parts: Partial<DriveSheet> = {}): DriveSheet {
  return {
    ratedVoltageV: 7.4,
    noLoadSpeed: 6,
    noLoadCurrentA: 0.2,
    stallEffort: 2.5,
    stallCurrentA: 3,
    ratedEffort: null,
    ratedSpeed: null,
    ratedCurrentA: null,
    otherVoltages: [],
    drivesPerFeatureCount: 1,
    maximumVoltageV: 8.5,
    figuresFrom: 'data-sheet',
    idleCurrentA: 0.01,
    holdCurrentA: null,
    holdEffort: null,
    control: 'position',
    positionFeedback: true,
    poweredAtHold: true,
    poweredAtRest: true,
    pulseFrequencyHz: 2000,
    electricalTimeConstantS: 0.15e-3,
    mechanicalTimeConstantS: 0.015,
    regenerates: false,
    shortsWhenOff: false,
    gearEfficiency: null,
    backwardEfficiency: null,
    meshCount: null,
    leadAngleRad: null,
    pressureAngleRad: null,
    frictionRunningCoefficient: null,
    frictionStaticCoefficient: null,
    screwDiameterM: null,
    screwLeadM: null,
    flankAngleRad: null,
    collarDiameterM: null,
    collarFrictionCoefficient: null,
    backdrivesAtEffort: null,
    breaksAtEffort: null,
    shakeRatio: 0.5,
    onShareFraction: null,
    onPeriodS: null,
    coupling: 'direct',
    couplingRatio: null,
    couplingEfficiency: 1,
    spoolRadiusM: null,
    strutFrameArmM: null,
    strutFeatureArmM: null,
    strutLevelAngleRad: null,
    strutSide: 'push',
    strokeM: null,
    closedLengthM: null,
    sideLoadLimitN: null,
    massKg: 0.06,
    mountMassKg: 0,
    electronicsMassKg: 0,
    ridesOnFeature: false,
    rideDistanceM: null,
    lengthM: 0.04,
    widthM: 0.02,
    heightM: 0.04,
    windingToCaseKPerW: 6,
    caseToAirKPerW: null,
    windingHeatCapacityJPerK: null,
    caseHeatCapacityJPerK: null,
    windingLimitK: 373.15,
    caseMaterial: 'plastic',
    supply: 'pack',
    regulatorVoltageV: null,
    regulatorEfficiency: 0.85,
    regulatorLimitA: null,
    priceMoney: 30,
    extraCostMoney: 0,
    reworkTimeS: 0,
    swapTimeS: null,
    noiseDb: null,
    noiseDistanceM: null,
    backlash: null,
    lifeCyclesCount: null,
    ingressRating: null,
    onSignalLoss: null,
    source: '',
    sourceDate: '',
    note: '',
    ...parts,
  };
}

/** Typical figures by kind, fixed here so that a change of the assumption table moves no test. */
export const plainTypical: Record<DriveKind, TypicalFigures> = {
  'position-servo': typical(0.65, 0.3, 0.9, 0.08, 0, 0),
  'worm-gearmotor': typical(0.35, 0.08, 0.65, 0.08, 0.06, 0.1),
  'screw-actuator': typical(0.3, 0.1, 0.65, 0.1, 0.12, 0.15),
};

function typical(
  usual: number,
  floor: number,
  ceiling: number,
  idle: number,
  running: number,
  standing: number,
) {
  return {
    forwardEfficiency: usual,
    forwardEfficiencyFloor: floor,
    forwardEfficiencyCeiling: ceiling,
    noLoadCurrentRatio: idle,
    frictionRunningCoefficient: running,
    frictionStaticCoefficient: standing,
    staticFrictionRatio: 1.25,
    holdFrictionFraction: 0.15,
  };
}

/** A chemistry with plain constants: product in mΩ·Ah, then R_0 share, τ, E_a in kJ/mol, k in %/K, voltages. */
function chemistry(
  id: CellChemistryId,
  mohmAh: number,
  share: number,
  tau: number,
  kj: number,
  cold: number,
  v: number[],
): Chemistry {
  return {
    id,
    resistanceChargeOhmC: mohmAh * 3.6,
    immediateFraction: share,
    relaxationTimeS: tau,
    activationEnergyJPerMol: kj * 1000,
    coldLossPerK: cold / 100,
    fullVoltageV: v[0]!,
    nominalVoltageV: v[1]!,
    cutOffVoltageV: v[2]!,
    floorVoltageV: v[3]!,
  };
}

/** The six chemistries with the default constants. */
export const plainChemistries: Record<CellChemistryId, Chemistry> = {
  lipo: chemistry('lipo', 120, 0.6, 60, 12, 0.35, [4.2, 3.7, 3.3, 3]),
  'nmc-pouch': chemistry('nmc-pouch', 100, 0.6, 60, 12, 0.35, [4.2, 3.7, 3.3, 3]),
  'li-ion': chemistry('li-ion', 200, 0.65, 60, 12, 0.35, [4.2, 3.6, 3, 2.5]),
  'li-ion-power': chemistry('li-ion-power', 100, 0.7, 60, 16, 0.3, [4.2, 3.6, 3, 2.5]),
  lifepo4: chemistry('lifepo4', 65, 0.45, 30, 27, 0.12, [3.65, 3.2, 2.8, 2.5]),
  nimh: chemistry('nimh', 100, 0.7, 60, 15, 0.5, [1.45, 1.2, 1, 0.9]),
};

export function plainPack(id: CellChemistryId, parts: Partial<Pack> = {}): Pack {
  const cells = plainChemistries[id];
  return {
    id: 'pack',
    label: 'pack',
    chemistry: cells,
    seriesCount: 2,
    parallelCount: 1,
    capacityC: 2.2 * 3600,
    cellResistanceOhm: null,
    dischargeRatingPerH: null,
    reserveFraction: 0.2,
    cutOffVoltageV: cells.cutOffVoltageV,
    warningVoltageV: cells.cutOffVoltageV + 0.2,
    massKg: 0.13,
    agedToFraction: 1,
    priceMoney: null,
    chargeRatePerH: 1,
    figuresFrom: 'data-sheet',
    note: '',
    ...parts,
  };
}

const degrees = Math.PI / 180;

export function plainCue(parts: Partial<Cue>): Cue {
  const from = parts.fromPosition ?? 0;
  return {
    name: 'cue',
    action: 'hold',
    fromPosition: from,
    toPosition: parts.toPosition ?? from,
    durationS: 5,
    law: 'poly-345',
    lightsFraction: 0,
    note: '',
    line: 1,
    ...parts,
  };
}

/** Raise by 60°, hold, lower, rest: the smallest show of a hinged feature. */
export const plainLoop = (): Cue[] => [
  plainCue({ name: 'raise', action: 'move', fromPosition: 0, toPosition: 60 * degrees, durationS: 2 }),
  plainCue({ name: 'hold', action: 'hold', fromPosition: 60 * degrees, durationS: 20 }),
  plainCue({ name: 'lower', action: 'move', fromPosition: 60 * degrees, toPosition: 0, durationS: 2 }),
  plainCue({ name: 'rest', action: 'rest', fromPosition: 0, durationS: 6 }),
];

export function plainCandidate(
  kind: DriveKind,
  sheet: Partial<DriveSheet> = {},
  id = kind as string,
): Candidate {
  return {
    id,
    kind,
    label: id,
    sheet: plainSheet(sheet),
    typical: plainTypical[kind],
    extra: {},
    line: 2,
    file: 'candidates.csv',
  };
}

/** A whole small study in SI, without any file: an arm of 300 g that a servo raises by 60°. */
export function plainStudy(parts: Partial<Study> = {}): Study {
  const pack = parts.pack ?? plainPack('lipo');
  return {
    about: {
      question: 'q',
      project: 'p',
      preparedBy: '',
      preparedFor: '',
      date: '2026-01-01',
      currency: 'EUR',
    },
    feature: {
      kind: 'hinge',
      featureCount: 1,
      massKg: 0.3,
      balanceDistanceM: 0.15,
      tipDistanceM: 0.35,
      tipScaleKg: null,
      inertiaKgM2: null,
      shape: 'unknown',
      panelAreaM2: 0,
      lowerStopPosition: 0,
      upperStopPosition: 80 * degrees,
      inclineRad: Math.PI / 2,
      axisTiltRad: 0,
      frictionEffort: 0,
      latchPosition: null,
      spring: {
        form: 'none',
        stiffness: 0,
        freePosition: 0,
        constantEffort: 0,
        rateNPerM: 0,
        frameArmM: 0,
        featureArmM: 0,
        freeLengthM: 0,
      },
    },
    carrier: { worn: false, activity: 'stand', leanRad: 0, bodyMassKg: null },
    air: { gustMPerS: 0, temperatureK: 298.15, buried: false },
    space: { lengthM: null, widthM: null, heightM: null },
    wiring: {
      lengthM: 0.5,
      areaM2: 0.823e-6,
      switchResistanceOhm: 0.01,
      connectorResistanceOhm: 0.002,
      fuseRatingA: null,
      protectionTripA: null,
      protectionDelayS: null,
      controllerMinimumV: null,
    },
    packs: [pack],
    pack,
    packsCarriedCount: 1,
    packTemperatureK: 298.15,
    loads: [],
    show: { leadIn: [], loop: plainLoop() },
    candidates: [plainCandidate('position-servo')],
    baselineId: null,
    targetRuntimeS: null,
    eventsPerYearCount: 4,
    hourPriceMoney: 0,
    criteria: [],
    day: [],
    measured: [],
    drawsCount: 2048,
    seed: 1,
    provenance: [],
    ...parts,
  };
}
