import type { DriveKind, TypicalFigures } from '../drives/sheet.js';
import { formatWithSpread } from '../quantity/format.js';
import type { Provenance } from '../study/provenance.js';
import type { Assumption, Assumptions } from './read-assumptions.js';
import type { RowReading } from './row-reading.js';

/** The figures a type usually has, and the history of those that this candidate's gaps call for. */
export interface TypicalReading {
  figures: TypicalFigures;
  provenance: Provenance[];
}

/** Where each figure stands in the table of assumptions, and when a sheet needs it. */
interface TypicalItem {
  item: string;
  needed(reading: RowReading): boolean;
}

const lacks =
  (...properties: string[]) =>
  (reading: RowReading) =>
    properties.every((property) => reading.number(property) === null);
const never = () => false;
const hasThread = (reading: RowReading) =>
  reading.number('leadAngleRad') !== null || reading.number('screwLeadM') !== null;

const items: Record<keyof TypicalFigures, TypicalItem> = {
  forwardEfficiency: {
    item: 'forward_efficiency',
    needed: lacks('stallCurrentA', 'ratedCurrentA', 'gearEfficiency'),
  },
  forwardEfficiencyFloor: { item: 'forward_efficiency_floor', needed: never },
  forwardEfficiencyCeiling: { item: 'forward_efficiency_ceiling', needed: never },
  noLoadCurrentRatio: { item: 'no_load_current_share', needed: lacks('noLoadCurrentA') },
  // A sheet with a thread carries its own friction, given or assumed.
  frictionRunningCoefficient: { item: 'friction_running', needed: never },
  frictionStaticCoefficient: { item: 'friction_static', needed: never },
  staticFrictionRatio: {
    item: 'static_friction_ratio',
    needed: (reading) => !hasThread(reading) && lacks('backdrivesAtEffort', 'backwardEfficiency')(reading),
  },
  holdFrictionFraction: { item: 'hold_friction_share', needed: lacks('holdCurrentA') },
};

/** Takes the usual figures of a type; a figure that the type does not have is 0. */
export function typicalFigures(
  id: string,
  kind: DriveKind,
  reading: RowReading,
  assumptions: Assumptions,
): TypicalReading {
  const provenance: Provenance[] = [];
  const figures: Partial<Record<keyof TypicalFigures, number>> = {};
  for (const [property, { item, needed }] of Object.entries(items)) {
    const assumption = assumptions.find('drive', kind, item) ?? assumptions.find('drive', 'any', item);
    figures[property as keyof TypicalFigures] = (assumption?.value as number | undefined) ?? 0;
    if (assumption !== null && needed(reading)) {
      provenance.push(historyOf(`candidates.${id}.typical.${property}`, item, id, assumption));
    }
  }
  return { figures: figures as TypicalFigures, provenance };
}

function historyOf(path: string, field: string, owner: string, assumption: Assumption): Provenance {
  const value = assumption.value as number;
  return {
    path,
    field,
    owner,
    origin: 'assumed',
    written: null,
    shown: formatWithSpread(value, assumption.spread, 'ratio'),
    value,
    basis: assumption.basis,
    spread: assumption.spread,
    place: null,
  };
}
