import { type Ensemble, type OutcomeName, outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { CriterionId } from '../../study/choosing.js';
import { criterionValue, type DrawnFigures, type Judged } from '../criterion-values.js';
import { bandOf, quantileOf } from './bands.js';

/** One candidate with its draws: a column per outcome. */
export interface DrawnCandidate {
  judged: Judged;
  columns: Float64Array[];
}

/** The column in which a criterion is drawn; null where it is the same in every draw. */
const drawnAs: Record<CriterionId, OutcomeName | null> = {
  runtime: 'runtimeS',
  runtime_p10: null,
  hold_power: 'holdPowerW',
  peak_current: 'peakPackCurrentA',
  body_mass: 'bodyMassKg',
  feature_mass: 'featureMassKg',
  cue_fidelity: 'cueFidelityRatio',
  torque_margin: 'torqueMarginRatio',
  winding_temperature: 'windingTemperatureK',
  case_temperature: 'caseTemperatureK',
  noise: null,
  cost: 'cost',
  rework_hours: 'reworkTimeS',
  swap_minutes: null,
  fall_energy: 'fallEnergyJ',
  crush_force: 'crushForceN',
  push_force: 'pushForceN',
  fits: null,
  voltage: null,
};

/** The draws of one criterion; a figure that is not drawn counts as its nominal one, NaN where it is missing. */
export function drawnCriterion(id: CriterionId, { judged, columns }: DrawnCandidate): Float64Array {
  const name = drawnAs[id];
  if (name !== null) return columns[outcomeIndex[name]]!;
  const column = new Float64Array(columns[0]!.length);
  return column.fill(criterionValue(id, judged).value ?? Number.NaN);
}

/** Whether a word that names a limit is a criterion with draws. */
export const isDrawn = (criterion: string): criterion is CriterionId =>
  Object.hasOwn(drawnAs, criterion) && drawnAs[criterion as CriterionId] !== null;

/** What the nominal judgement needs of the draws, by candidate. */
export function drawnFigures({ candidateIds, outcomes }: Ensemble): Map<string, DrawnFigures> {
  return new Map(
    candidateIds.map((id, index) => {
      const columns = outcomes[index]!;
      const runtimes = columns[outcomeIndex.runtimeS]!.map((timeS) =>
        Number.isNaN(timeS) ? 0 : timeS,
      ).sort();
      const median = (name: OutcomeName) => bandOf(columns[outcomeIndex[name]]!)?.median ?? null;
      const figures: DrawnFigures = {
        runtimeP10S: quantileOf(runtimes, 0.1),
        holdEffortRatio: median('holdEffortRatio'),
        torqueMarginRatio: median('torqueMarginRatio'),
        columns,
      };
      return [id, figures];
    }),
  );
}
