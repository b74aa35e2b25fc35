import { isSure } from '../simulate/failures.js';
import type { Failure } from '../simulate/outcome.js';
import type { Criterion, Limit } from '../study/choosing.js';
import type { Space } from '../study/feature.js';
import type { LimitOutcome } from './assessment.js';
import { criterionValue, type Judged } from './criterion-values.js';
import { volts } from './figures.js';

export { passesAll } from './choosing/rank-order.js';

/**
 * Every hard limit against one candidate, exactly one outcome per limit: first the ways in which it cannot do
 * the job at all, then voltage and fit, which always count, then what the criteria demand.
 *
 * A figure that is missing leaves its limit not judged and named; it never passes.
 */
export function limitsOf(judged: Judged): LimitOutcome[] {
  const demanded = judged.study.criteria.filter((criterion) => criterion.must !== null);
  const outcomes = [...failuresAsLimits(judged.run.failures), voltageLimit(judged), fitLimit(judged)];
  for (const criterion of demanded) {
    if (criterion.id === 'voltage' || criterion.id === 'fits') continue;
    outcomes.push(criterionLimit(criterion.id, criterion.must as Limit, judged));
  }
  return outcomes;
}

/**
 * How far inside a limit a value lies, as a share of the limit; negative outside.
 * @param zero where the scale starts: 0, except for temperatures, which count from the air
 */
export function marginOf(value: number, { direction, bound }: Limit, zero = 0): number {
  const inside = direction === 'at-least' ? value - bound : bound - value;
  const scale = Math.abs(bound - zero);
  return scale > 0 ? inside / scale : inside;
}

function criterionLimit(id: Criterion['id'], limit: Limit, judged: Judged): LimitOutcome {
  const head = { criterion: id, direction: limit.direction, limit: limit.bound };
  const { value, missing } = criterionValue(id, judged);
  if (value === null && id.endsWith('_temperature') && judged.run.nominal.thermalRunaway)
    return { ...head, value, passes: false, margin: -1, reason: 'the winding never settles' };
  if (value === null) return { ...head, value, passes: null, margin: null, missing: missing ?? id };
  if (!Number.isFinite(value)) {
    const passes = limit.direction === 'at-least';
    return { ...head, value: null, passes, margin: passes ? 1 : -1, reason: 'it does not yield' };
  }
  const zero = id.endsWith('_temperature') ? judged.study.air.temperatureK : 0;
  const margin = marginOf(value, limit, zero);
  return { ...head, value, passes: margin >= 0, margin };
}

/** What a drive bears is assumed where it is not given: enough to pass by, and no ground to rule it out. */
function voltageLimit({ study, candidate, run }: Judged): LimitOutcome {
  const { busVoltageV, maximumVoltageV } = run.nominal;
  const head = { criterion: 'voltage', direction: 'at-most', value: busVoltageV } as const;
  const margin = marginOf(busVoltageV, { direction: 'at-most', bound: maximumVoltageV });
  const isAssumed = study.provenance.some(
    ({ path, origin }) => origin === 'assumed' && path === `candidates.${candidate.id}.sheet.maximumVoltageV`,
  );
  if (margin < 0 && isAssumed) {
    const reason = `${volts(busVoltageV)} where ${volts(maximumVoltageV)} is assumed to be borne`;
    return {
      ...head,
      limit: maximumVoltageV,
      passes: null,
      margin: null,
      missing: 'maximum_voltage',
      reason,
    };
  }
  return { ...head, limit: maximumVoltageV, passes: margin >= 0, margin };
}

/** Fits or not; the margin is the tightest side of the best way to lay the box. */
function fitLimit(judged: Judged): LimitOutcome {
  const { value, missing } = criterionValue('fits', judged);
  const head = { criterion: 'fits', direction: 'at-least', limit: 1, value } as const;
  if (value === null)
    return { ...head, passes: null, margin: null, missing: missing ?? 'length, width, height' };
  const passes = value >= 1;
  const room = roomFraction(judged) ?? (passes ? 1 : -1);
  return { ...head, passes, margin: passes ? Math.max(0, room) : Math.min(0, room) };
}

/** Free share of the tightest side in the best of six orientations; null without a box or without a space. */
function roomFraction({ study: { space }, candidate: { sheet } }: Judged): number | null {
  const sides = [sheet.lengthM, sheet.widthM, sheet.heightM];
  const rooms = roomSides(space);
  if (sides.some((side) => side === null) || rooms.every((room) => room === null)) return null;
  const box = sides as number[];
  const orders = [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
  ];
  const tightest = orders.map((order) =>
    Math.min(...rooms.map((room, axis) => (room === null ? 1 : (room - box[order[axis]!]!) / room))),
  );
  return Math.max(...tightest);
}

function roomSides(space: Space): (number | null)[] {
  return [space.lengthM, space.widthM, space.heightM];
}

/**
 * One outcome per way of failing; further places where it fails the same way join its reason. What waits for a blank
 * is not judged, unless it fails the same way for sure.
 */
function failuresAsLimits(failures: Failure[]): LimitOutcome[] {
  const outcomes = new Map<string, LimitOutcome>();
  const sure = failures.filter(isSure);
  const waiting = failures.filter((one) => !isSure(one) && sure.every(({ code }) => code !== one.code));
  for (const failure of [...sure, ...waiting]) {
    const known = outcomes.get(failure.code);
    if (known) known.reason = `${known.reason}; ${failure.reason}`;
    else outcomes.set(failure.code, failureAsLimit(failure));
  }
  return [...outcomes.values()];
}

function failureAsLimit({ code, reason, value, limit, missing }: Failure): LimitOutcome {
  if (missing !== undefined) {
    const open = { value: null, passes: null, margin: null, missing, reason };
    return { criterion: code, direction: 'at-least', limit: 1, ...open };
  }
  if (value === null || limit === null) {
    return { criterion: code, direction: 'at-least', limit: 1, value: 0, passes: false, margin: -1, reason };
  }
  const direction = value < limit ? 'at-least' : 'at-most';
  const margin = Math.min(0, marginOf(value, { direction, bound: limit }));
  return { criterion: code, direction, limit, value, passes: false, margin, reason };
}
