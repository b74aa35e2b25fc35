/** Cell chemistries with a discharge table. */
export const cellChemistryIds = ['lipo', 'nmc-pouch', 'li-ion', 'li-ion-power', 'lifepo4', 'nimh'] as const;
/** As packs.csv writes it. */
export type CellChemistryId = (typeof cellChemistryIds)[number];

/**
 * Lithium-cobalt-oxide pouch cell.
 * @source ai-2020, open-circuit curve
 */
const lipoVoltagesV: readonly number[] = [
  3.0399, 3.3863, 3.5763, 3.6639, 3.6969, 3.7212, 3.7373, 3.7574, 3.7713, 3.7799, 3.7911, 3.8054, 3.8231,
  3.846, 3.8828, 3.9215, 3.9562, 3.9927, 4.0336, 4.0782, 4.1254, 4.1815,
];

/**
 * Lithium nickel-manganese-cobalt pouch cell.
 * @source reniers-2019, open-circuit curve
 */
const nmcPouchVoltagesV: readonly number[] = [
  2.7, 3.1264, 3.3811, 3.4794, 3.5209, 3.5547, 3.5809, 3.6154, 3.6328, 3.6469, 3.6626, 3.6814, 3.7055, 3.7551,
  3.797, 3.8354, 3.8782, 3.9255, 3.981, 4.0409, 4.1028, 4.2,
];

/**
 * Lithium nickel-manganese-cobalt cylindrical cell.
 * @source cell-21700-rate-tests, open-circuit curve
 */
const liIonVoltagesV: readonly number[] = [
  2.5408, 2.9015, 3.0831, 3.263, 3.3886, 3.44, 3.4956, 3.5506, 3.5875, 3.6173, 3.6484, 3.6869, 3.7354, 3.7889,
  3.8461, 3.8937, 3.9396, 3.9951, 4.0486, 4.0768, 4.0973, 4.1753,
];

/**
 * Lithium-iron-phosphate cell, discharge branch.
 * @source kawakita-2021, discharge curves
 */
const lifepo4VoltagesV: readonly number[] = [
  2.01, 2.8308, 3.0409, 3.1786, 3.1892, 3.2136, 3.2333, 3.2468, 3.262, 3.2728, 3.2758, 3.2774, 3.2789, 3.2807,
  3.2835, 3.2906, 3.3111, 3.3172, 3.3192, 3.3209, 3.3229, 3.5,
];

/**
 * Nickel-metal hydride cell, discharge branch; a weak source.
 * @source nimh-module-table, discharge curve
 */
const nimhVoltagesV: readonly number[] = [
  1, 1.12, 1.18, 1.23, 1.245, 1.26, 1.27, 1.28, 1.285, 1.29, 1.29, 1.29, 1.295, 1.3, 1.305, 1.31, 1.315, 1.32,
  1.33, 1.34, 1.355, 1.37,
];

/** Open-circuit voltages of one cell at 0 and 2 % of charge, then every 5 % up to 100; `cell.ts` looks them up. */
export const openCircuitVoltagesV: Record<CellChemistryId, readonly number[]> = {
  lipo: lipoVoltagesV,
  'nmc-pouch': nmcPouchVoltagesV,
  'li-ion': liIonVoltagesV,
  'li-ion-power': liIonVoltagesV,
  lifepo4: lifepo4VoltagesV,
  nimh: nimhVoltagesV,
};
