import { cellSources } from './cells.js';
import { electricitySources } from './electricity.js';
import { heatAndSafetySources } from './heat-and-safety.js';
import { mechanicsSources } from './mechanics.js';
import { methodSources } from './methods.js';
import type { Source } from './source.js';
import { unitSources } from './units.js';

export type { Source };

/**
 * Every publication the project leans on, once.
 * Books are cited from memory unless a locator says otherwise: by section, not by page.
 */
const list = [
  ...unitSources,
  ...mechanicsSources,
  ...electricitySources,
  ...cellSources,
  ...heatAndSafetySources,
  ...methodSources,
] as const;

/** Ids of the register; an unknown one does not compile. */
export type SourceId = (typeof list)[number]['id'];

/** The register in the order of its subjects. */
export const sources: readonly Source[] = list;

/**
 * The publication with this id; undefined for an id that is not in the register.
 * @param id as in the register
 */
export function findSource(id: string): Source | undefined {
  return sources.find((source) => source.id === id);
}

/**
 * A value together with where it was published; returns the value as it is.
 * The id is checked by the compiler, the locator is for the reader.
 * @param value the number in SI
 * @param id publication in the register
 * @param locator section, table or equation in it; says so when from memory
 */
export function cited(value: number, id: SourceId, locator: string): number {
  void id;
  void locator;
  return value;
}
