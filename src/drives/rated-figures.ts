import type { DriveSheet, RatedFigures } from './sheet.js';

/** The figures that hold at one voltage. */
export const ratedFigures = [
  'noLoadSpeed',
  'noLoadCurrentA',
  'stallEffort',
  'stallCurrentA',
  'ratedEffort',
  'ratedSpeed',
  'ratedCurrentA',
] as const satisfies readonly (keyof RatedFigures)[];

/**
 * The sheet's figures at the voltage the drive will see, where the listing gives several voltages.
 *
 * Linear between the two listed voltages on either side; held at the nearest listed voltage outside them
 * (the motor model carries on from there). A figure that one side lacks is taken from the other.
 * @param voltageV nominal voltage of the drive's bus
 * @returns the sheet itself when it lists one voltage only
 */
export function figuresAtVoltage(sheet: DriveSheet, voltageV: number): RatedFigures {
  if (sheet.otherVoltages.length === 0) return sheet;
  const listed: RatedFigures[] = [sheet, ...sheet.otherVoltages].sort(
    (p, q) => p.ratedVoltageV - q.ratedVoltageV,
  );
  const last = listed.length - 1;
  const upper = listed.findIndex((row) => row.ratedVoltageV >= voltageV);
  if (upper <= 0) return listed[upper === 0 ? 0 : last]!;
  const low = listed[upper - 1]!;
  const high = listed[upper]!;
  const share = (voltageV - low.ratedVoltageV) / (high.ratedVoltageV - low.ratedVoltageV);
  const between: RatedFigures = { ...low, ratedVoltageV: voltageV };
  for (const figure of ratedFigures) {
    const from = low[figure];
    const to = high[figure];
    (between as Record<(typeof ratedFigures)[number], number | null>)[figure] =
      from === null ? to : to === null ? from : from + share * (to - from);
  }
  return between;
}
