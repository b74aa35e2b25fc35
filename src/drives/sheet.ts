/** Drive types known to the tool; the registry has one entry per kind. */
export type DriveKind = 'position-servo' | 'worm-gearmotor' | 'screw-actuator';

/** Rotary: efforts in N·m, speeds in rad/s. Linear: N and m/s. */
export type Motion = 'rotary' | 'linear';

/** How the drive is joined to the feature. */
export type CouplingKind = 'direct' | 'geared' | 'spool' | 'strut';

/** Loaded and unloaded figures at one voltage, as a listing states them. */
export interface RatedFigures {
  ratedVoltageV: number;
  noLoadSpeed: number;
  noLoadCurrentA: number | null;
  stallEffort: number | null;
  stallCurrentA: number | null;
  ratedEffort: number | null;
  ratedSpeed: number | null;
  ratedCurrentA: number | null;
}

/**
 * A candidate's spec sheet in SI. null = not known.
 * Speeds, efforts and backlash in the drive's own motion (rotary or linear).
 */
export interface DriveSheet extends RatedFigures {
  /** The same drive at other voltages; empty for most listings. */
  otherVoltages: RatedFigures[];
  drivesPerFeatureCount: number;
  maximumVoltageV: number;
  figuresFrom: 'listing' | 'data-sheet' | 'measured';
  idleCurrentA: number;
  holdCurrentA: number | null;
  holdEffort: number | null;
  control: 'position' | 'switched';
  /** Whether it can stop between its end switches. */
  positionFeedback: boolean | null;
  poweredAtHold: boolean;
  poweredAtRest: boolean;
  pulseFrequencyHz: number;
  electricalTimeConstantS: number;
  mechanicalTimeConstantS: number;
  regenerates: boolean;
  shortsWhenOff: boolean;
  gearEfficiency: number | null;
  backwardEfficiency: number | null;
  meshCount: number | null;
  leadAngleRad: number | null;
  pressureAngleRad: number | null;
  frictionRunningCoefficient: number | null;
  frictionStaticCoefficient: number | null;
  /** Mean (pitch) diameter of the thread. */
  screwDiameterM: number | null;
  screwLeadM: number | null;
  flankAngleRad: number | null;
  collarDiameterM: number | null;
  collarFrictionCoefficient: number | null;
  backdrivesAtEffort: number | null;
  breaksAtEffort: number | null;
  /** Share of its static friction that a locking mesh keeps while it is shaken. */
  shakeRatio: number;
  onShareFraction: number | null;
  onPeriodS: number | null;
  coupling: CouplingKind;
  couplingRatio: number | null;
  couplingEfficiency: number;
  spoolRadiusM: number | null;
  strutFrameArmM: number | null;
  strutFeatureArmM: number | null;
  strutLevelAngleRad: number | null;
  strutSide: 'push' | 'pull';
  strokeM: number | null;
  closedLengthM: number | null;
  sideLoadLimitN: number | null;
  massKg: number | null;
  mountMassKg: number | null;
  electronicsMassKg: number | null;
  ridesOnFeature: boolean;
  rideDistanceM: number | null;
  lengthM: number | null;
  widthM: number | null;
  heightM: number | null;
  windingToCaseKPerW: number;
  caseToAirKPerW: number | null;
  windingHeatCapacityJPerK: number | null;
  caseHeatCapacityJPerK: number | null;
  windingLimitK: number;
  caseMaterial: 'plastic' | 'metal' | null;
  supply: 'pack' | 'regulated';
  regulatorVoltageV: number | null;
  regulatorEfficiency: number;
  regulatorLimitA: number | null;
  priceMoney: number | null;
  extraCostMoney: number | null;
  reworkTimeS: number | null;
  swapTimeS: number | null;
  noiseDb: number | null;
  noiseDistanceM: number | null;
  /** rad (rotary) or m (linear). */
  backlash: number | null;
  lifeCyclesCount: number | null;
  ingressRating: string | null;
  onSignalLoss: 'holds' | 'frees' | 'centres' | null;
  source: string;
  sourceDate: string;
  note: string;
}

/** Typical figures of a drive type, used where the sheet has gaps; nominal values of the assumption table. */
export interface TypicalFigures {
  forwardEfficiency: number;
  forwardEfficiencyFloor: number;
  forwardEfficiencyCeiling: number;
  /** No-load current as a share of stall current. */
  noLoadCurrentRatio: number;
  frictionRunningCoefficient: number;
  frictionStaticCoefficient: number;
  /** Static friction over running friction when no geometry is known. */
  staticFrictionRatio: number;
  /** Share of the friction band that a powered hold works against. */
  holdFrictionFraction: number;
}
