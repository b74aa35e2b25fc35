import type { DriveKind } from '../../drives/sheet.js';
import { formatQuantity } from '../../quantity/format.js';
import { type Ensemble, type OutcomeName, outcomeIndex } from '../../simulate/ensemble/ensemble.js';
import type { MeasuredQuantity } from '../../study/choosing.js';
import { measuredDimensions } from '../../study/choosing-fields.js';
import type { Study } from '../../study/study.js';
import { benchWork, measuredField, measuredWork } from '../bench-work.js';
import type { MeasuringTools } from '../measurements.js';
import { fieldWords } from '../verdict/labels.js';
import { type ShowValue, shownAs, unitOf } from './shown-value.js';

/** Something that could be known before choosing: an input, or what is measured on a drive. */
export interface Knowable {
  path: string;
  field: string;
  /** Candidate, pack or load it belongs to; null for the study's own. */
  owner: string | null;
  label: string;
  /** One value per draw. */
  values: Float64Array;
  show: ShowValue;
  /** How exact a measurement is said: as a share of the figure, or in the unit. */
  scale: 'share' | 'temperature' | 'angle';
  /** null: nothing to do on a bench. */
  bench: { instrument: string; minutes: number; method: string } | null;
}

/** Readings of measured.csv that the draws know, and their columns. */
const readings: Partial<Record<MeasuredQuantity, OutcomeName>> = {
  runtime: 'runtimeS',
  hold_current: 'holdPackCurrentA',
  case_temperature: 'caseTemperatureK',
};

/**
 * Everything that could be known better: readings on the drive of today that nobody has made yet, and each input of
 * the draws; inputs whose effect one bench reading settles together stand as that reading.
 */
export function knowables(
  study: Study,
  ensemble: Ensemble,
  howToMeasure: MeasuringTools['howToMeasure'],
): Knowable[] {
  const found = new Map<string, Knowable>();
  const add = (knowable: Knowable) => {
    const key = `${knowable.owner ?? ''}/${knowable.field}`;
    if (!found.has(key) && varies(knowable.values)) found.set(key, knowable);
  };
  for (const knowable of readingsOf(study, ensemble)) add(knowable);
  for (const input of ensemble.inputs) {
    const knowable = knowableOf(study, ensemble, input, howToMeasure);
    if (knowable !== null) add(knowable);
  }
  return [...found.values()];
}

/** A reading that does not occur stands below all that do. */
const noReading = -1;

const withoutGaps = (values: Float64Array): Float64Array =>
  values.map((value) => (Number.isNaN(value) ? noReading : value));

const varies = (values: Float64Array): boolean => values.some((value) => value !== values[0]);

const columnOf = ({ candidateIds, outcomes }: Ensemble, id: string, name: OutcomeName): Float64Array | null =>
  outcomes[candidateIds.indexOf(id)]?.[outcomeIndex[name]] ?? null;

function readingsOf({ baselineId, measured }: Study, ensemble: Ensemble): Knowable[] {
  if (baselineId === null) return [];
  return (Object.keys(readings) as MeasuredQuantity[]).flatMap((quantity): Knowable[] => {
    const values = columnOf(ensemble, baselineId, readings[quantity]!);
    if (values === null || measured.some((reading) => reading.quantity === quantity)) return [];
    const dimension = measuredDimensions[quantity];
    const { meaning, how, instrument, minutes } = measuredWork[quantity];
    return [
      {
        path: `measured.${quantity}`,
        field: quantity,
        owner: baselineId,
        label: meaning,
        values: withoutGaps(values),
        show: (value) => formatQuantity(value, dimension),
        scale: dimension === 'temperature' ? 'temperature' : 'share',
        bench: { instrument, minutes, method: how },
      },
    ];
  });
}

function knowableOf(
  study: Study,
  ensemble: Ensemble,
  { path, field, owner, values }: Ensemble['inputs'][number],
  howToMeasure: MeasuringTools['howToMeasure'],
): Knowable | null {
  const entry = study.provenance.find((history) => history.path === path);
  const candidate = study.candidates.find(({ id }) => id === owner);
  const reading = measuredField(field);
  // Already measured on the drive of today, where the draws agree with it.
  if (owner === study.baselineId && study.measured.some(({ quantity }) => quantity === reading)) return null;
  const work = benchWork(reading);
  const told = howToMeasure(reading, (candidate?.kind ?? null) as DriveKind | null);
  const held =
    reading === 'hold_current' && candidate ? columnOf(ensemble, candidate.id, 'holdPackCurrentA') : null;
  const dimension = entry === undefined ? null : (unitOf(entry)?.dimension ?? null);
  return {
    path,
    field: reading,
    owner: owner ?? null,
    label: told?.meaning ?? fieldWords(field),
    values: held === null ? values : withoutGaps(held),
    show: held === null ? shownAs(entry) : (value) => formatQuantity(value, 'current'),
    scale: dimension === 'temperature' || dimension === 'angle' ? dimension : 'share',
    bench: work === null || told === null ? null : { ...work, method: told.how },
  };
}
