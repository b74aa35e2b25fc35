import { measuredTwice, notAMeasurement } from '../archive/decision-messages.js';
import { issueCollector } from '../input/issue-collector.js';
import { readAssumptions } from '../input/read-assumptions.js';
import { readMeasured } from '../input/read-day.js';
import { readTable } from '../input/table.js';
import type { Result } from '../problem/issue.js';
import type { MeasuredQuantity, Measurement } from '../study/choosing.js';
import { measuredDimensions } from '../study/choosing-fields.js';

/** Something measured on the day, with how it was typed. */
export interface TypedMeasurement extends Measurement {
  written: string;
}

/** Where issues with typed measurements are said to be. */
const flag = '--log';

/**
 * Reads `quantity=value` as measured.csv is read: `runtime=95 min`, `hold_current=310 mA ±10`. The decimal mark may
 * be a comma.
 */
export function typedMeasurements(typed: readonly string[]): Result<TypedMeasurement[]> {
  const { report, issues } = issueCollector();
  const place = { file: flag, line: null, column: null };
  const pairs = typed.flatMap((text) => {
    const at = text.indexOf('=');
    if (at <= 0) report(place, notAMeasurement(text, measurable));
    return at <= 0 ? [] : [{ quantity: text.slice(0, at).trim(), value: text.slice(at + 1).trim() }];
  });
  const repeated = pairs.find(({ quantity }, index) =>
    pairs.slice(0, index).some((other) => other.quantity === quantity),
  );
  if (repeated !== undefined) report(place, measuredTwice(repeated.quantity));
  if (typed.length === 0) report(place, notAMeasurement('', measurable));
  const rows = pairs.map(({ quantity, value }) => `${cell(quantity)};${cell(value)}`);
  const bytes = new TextEncoder().encode(['quantity;value', ...rows].join('\n'));
  const table =
    pairs.length === 0 || repeated !== undefined
      ? null
      : readTable({ name: flag, bytes }, ['quantity', 'value'], report);
  const measured = table === null ? [] : readMeasured(table, readAssumptions(), report).measured;
  // A line of the table stands for a word of the command.
  const told = issues.map((issue) => {
    const pair = issue.line === null ? undefined : pairs[issue.line - 2];
    return { ...issue, file: flag, line: null, column: pair?.quantity ?? null };
  });
  if (told.some(({ severity }) => severity === 'error')) return { ok: false, issues: told };
  const written = (quantity: MeasuredQuantity) =>
    pairs.find((pair) => pair.quantity === quantity)?.value ?? '';
  return {
    ok: true,
    value: measured.map((entry) => ({ ...entry, written: written(entry.quantity) })),
    issues: told,
  };
}

const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Everything that can be measured on the day. */
export const measurable = Object.keys(measuredDimensions) as MeasuredQuantity[];
