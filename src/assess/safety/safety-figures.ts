import type { DriveSheet } from '../../drives/sheet.js';
import type { NominalOutcome } from '../../simulate/outcome.js';
import type { TipMotion } from '../../simulate/tip-motion.js';
import type { ChemistryId } from '../../study/supply.js';
import type { Assessment, CandidateAssessment, Caution } from '../assessment.js';
import { packEnergyJ } from '../cautions/packs.js';
import { destroyedCaseK } from '../thresholds.js';
import { most } from './cautious.js';
import { type Extents, extentsOf } from './extents.js';
import { type FallFigures, fallFigures } from './fall-figures.js';

/**
 * What somebody who lets a feature into an event needs to know of it, of one candidate. Where there are draws, mass,
 * fall, crush and case temperature stand at their cautious end: nine draws in ten are milder, and so is the nominal
 * figure. The others are nominal. SI; null = does not occur or is not known.
 */
export interface SafetyFigures {
  version: string;
  modelVersion: string;
  inputHash: string;
  draws: number;
  /** Whether draws made some figures cautious. */
  isCautious: boolean;
  candidate: string;
  label: string;
  /** Whether it is the drive that is built today. */
  isBuilt: boolean;
  featureCount: number;
  extents: Extents;
  /** Of one feature, with what rides on it. */
  movingMassKg: number | null;
  powerCut: FallFigures;
  motion: { showSpeedMPerS: number | null; showEnergyJ: number | null; freeSpeedMPerS: number | null };
  /** At stall; the distance is that from the hinge, null on a slide. */
  crush: { forceN: number | null; distanceM: number | null; tipForceN: number | null };
  /** Force at the tip to move it; null where it does not yield. */
  push: Pick<NominalOutcome, 'pushDownN' | 'pushUpN' | 'unpoweredPushDownN' | 'unpoweredPushUpN'>;
  pack: { chemistry: ChemistryId; energyJ: number; carriedCount: number; carriedEnergyJ: number };
  supply: { fuseRatingA: number | null; protectionTripA: number | null };
  heat: {
    caseTemperatureK: number | null;
    heldCaseTemperatureK: number | null;
    neverSettles: boolean;
    /** Whether the winding passes its limit in the show, or the case what no drive survives. */
    burnsOut: boolean;
    /** The same if the first hold never ended, nominal. */
    heldBurnsOut: boolean;
    windingLimitK: number | null;
  };
  onSignalLoss: DriveSheet['onSignalLoss'];
  /** Raised by the numbers about this candidate or the whole feature, worst first. */
  cautions: Caution[];
}

/** Cautions that say how well minutes are known or what an airline wants: no business of who lets it into an event. */
const notForOrganisers = [
  'hold-current-uncertain',
  'cut-off-high',
  'pack-by-label',
  'measurement-disagrees',
  'watt-hours',
  'day-not-sure',
];

/** The safety figures of one candidate of an assessment. */
export function safetyFigures(
  assessment: Assessment,
  candidate: CandidateAssessment,
  motion: TipMotion,
): SafetyFigures {
  const { study } = assessment;
  const { nominal, uncertain } = candidate;
  const { pack, packsCarriedCount, wiring } = study;
  const sheet = study.candidates.find(({ id }) => id === candidate.id)?.sheet;
  return {
    version: assessment.version,
    modelVersion: assessment.modelVersion,
    inputHash: assessment.inputHash,
    draws: assessment.draws,
    isCautious: Object.keys(uncertain).length > 0,
    candidate: candidate.id,
    label: candidate.label,
    isBuilt: candidate.isBaseline,
    featureCount: study.feature.featureCount,
    extents: extentsOf(study),
    movingMassKg: most(nominal.featureMassKg, uncertain.featureMassKg?.p90),
    powerCut: fallFigures(candidate, motion.tipMassKg),
    motion: {
      showSpeedMPerS: motion.showSpeedMPerS,
      showEnergyJ:
        motion.showSpeedMPerS === null ? null : 0.5 * motion.tipMassKg * motion.showSpeedMPerS ** 2,
      freeSpeedMPerS: motion.freeSpeedMPerS,
    },
    crush: crushOf(candidate, motion),
    push: {
      pushDownN: nominal.pushDownN,
      pushUpN: nominal.pushUpN,
      unpoweredPushDownN: nominal.unpoweredPushDownN,
      unpoweredPushUpN: nominal.unpoweredPushUpN,
    },
    pack: {
      chemistry: pack.chemistry.id,
      energyJ: packEnergyJ(pack),
      carriedCount: packsCarriedCount,
      carriedEnergyJ: packEnergyJ(pack) * packsCarriedCount,
    },
    supply: { fuseRatingA: wiring.fuseRatingA, protectionTripA: wiring.protectionTripA },
    heat: heatOf(candidate, sheet?.windingLimitK ?? null),
    onSignalLoss: sheet?.onSignalLoss ?? null,
    cautions: inOrder(assessment.cautions.filter((caution) => isForOrganisers(caution, candidate))),
  };
}

/** What a hand meets: a page that holds no more keeps these before what the drive does to itself. */
const touchHazards = ['hot-case', 'crush'];

/** Worst first; of what is not severe, what hurts whoever touches it before the rest. */
function inOrder(cautions: Caution[]): Caution[] {
  const place = ({ severity, code }: Caution) =>
    severity === 'severe' ? 0 : touchHazards.includes(code) ? 1 : 2;
  return [...cautions].sort((a, b) => place(a) - place(b));
}

function heatOf(
  { nominal, uncertain }: CandidateAssessment,
  windingLimitK: number | null,
): SafetyFigures['heat'] {
  const caseTemperatureK = most(nominal.caseTemperatureK, uncertain.caseTemperatureK?.p90);
  const windingK = most(nominal.windingTemperatureK, uncertain.windingTemperatureK?.p90);
  const isPast = (winding: number | null, ofCase: number | null) =>
    (winding ?? 0) > (windingLimitK ?? Number.POSITIVE_INFINITY) || (ofCase ?? 0) > destroyedCaseK;
  return {
    caseTemperatureK,
    heldCaseTemperatureK: nominal.settledHoldCaseK,
    neverSettles: nominal.thermalRunaway,
    burnsOut: isPast(windingK, caseTemperatureK),
    heldBurnsOut: isPast(nominal.settledHoldWindingK, nominal.settledHoldCaseK),
    windingLimitK,
  };
}

function crushOf({ nominal, uncertain }: CandidateAssessment, motion: TipMotion): SafetyFigures['crush'] {
  const forceN = most(nominal.crushForceN, uncertain.crushForceN?.p90);
  // Both forces are one effort over two distances, so that their ratio holds in every draw.
  const tipForceN =
    forceN === null || nominal.crushForceAtTipN === null || !nominal.crushForceN
      ? nominal.crushForceAtTipN
      : (forceN * nominal.crushForceAtTipN) / nominal.crushForceN;
  return { forceN, distanceM: motion.crushDistanceM, tipForceN };
}

function isForOrganisers({ code, figure, candidate }: Caution, { id }: CandidateAssessment): boolean {
  return figure !== '' && (candidate === null || candidate === id) && !notForOrganisers.includes(code);
}
