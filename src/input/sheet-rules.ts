import { driveTypes } from '../drives/registry.js';
import * as say from '../problem/drive-messages.js';
import { partWithoutWhole } from '../problem/study-messages.js';
import type { FieldDeclaration } from '../quantity/field.js';
import { applyCouplingRules } from './coupling-rules.js';
import { formatSi } from './read-cell.js';
import type { RowReading } from './row-reading.js';
import type { SheetContext } from './sheet-context.js';

/** Takes what depends on other cells of the row, and checks what single cells cannot show. */
export function applySheetRules(context: SheetContext): void {
  checkRatedFigures(context.reading, context.columns);
  checkPairs(context);
  takeByRule(context);
  checkHoldCurrent(context);
  takeCosts(context);
  applyCouplingRules(context, driveTypes[context.kind].motion);
  dropIdle(context.reading);
}

/** Values that were taken for a part or mode that this candidate does not have. */
function dropIdle(reading: RowReading): void {
  if (reading.isBlank('noiseDb')) reading.idle('noiseDistanceM');
  if (reading.text('supply') !== 'regulated') reading.idle('regulatorEfficiency');
  if (reading.text('coupling') !== 'strut') reading.idle('strutSide');
  if (reading.text('control') !== 'switched') return;
  reading.idle('pulseFrequencyHz');
  reading.idle('electricalTimeConstantS');
}

/** What the figures of one voltage owe each other; asked of every row, also of those that repeat an id. */
export function checkRatedFigures(reading: RowReading, columns: readonly FieldDeclaration[]): void {
  checkLoadedPoint(reading, columns);
  checkOrder(reading, columns);
}

/** What a motor draws, turns and lifts lies between running free and being held still, at one voltage. */
const loadedDraws = 'a loaded motor draws more than one that runs free';
const orders: readonly (readonly [smaller: string, larger: string, because: string])[] = [
  ['noLoadCurrentA', 'stallCurrentA', loadedDraws],
  ['noLoadCurrentA', 'ratedCurrentA', loadedDraws],
  ['ratedSpeed', 'noLoadSpeed', 'a loaded motor turns slower than one that runs free'],
  ['ratedEffort', 'stallEffort', 'a motor that still turns pushes less than one that is held still'],
  ['ratedCurrentA', 'stallCurrentA', 'a motor that still turns draws less than one that is held still'],
];

function checkOrder(reading: RowReading, columns: readonly FieldDeclaration[]): void {
  const read = (property: string, value: number): say.ReadFigure => {
    const field = columns.find((column) => column.property === property)!;
    const written = reading.provenance.get(property)?.written ?? '';
    return { name: field.name, written, shown: formatSi(value, field) };
  };
  for (const [smaller, larger, because] of orders) {
    const [small, large] = [reading.number(smaller), reading.number(larger)];
    if (small === null || large === null || small < large) continue;
    const figure = read(smaller, small);
    reading.report(reading.at(figure.name), say.crossedFigures(figure, read(larger, large), because));
  }
}

/** The stall figure or the complete rated point must be there; an incomplete point beside a stall figure is idle. */
function checkLoadedPoint(reading: RowReading, columns: readonly FieldDeclaration[]): void {
  const field = (property: string) => columns.find((column) => column.property === property)!;
  const rated = ['ratedEffort', 'ratedSpeed', 'ratedCurrentA'];
  if ([...rated, 'stallEffort'].some((property) => reading.failed.has(property))) return;
  const missing = rated
    .filter((property) => reading.isBlank(property))
    .map((property) => field(property).name);
  const stall = field('stallEffort');
  if (!reading.isBlank('stallEffort')) {
    const given = rated.find((property) => !reading.isBlank(property));
    if (given !== undefined && missing.length > 0) {
      const { name } = field(given);
      reading.report(reading.at(name), say.ratedPointIncomplete(name, missing));
    }
  } else if (stall.presence === 'either' && missing.length > 0) {
    reading.report(reading.at(stall.name), say.noLoadedPoint(stall.name, missing));
  }
}

const pairs: readonly (readonly [part: string, whole: string])[] = [
  ['hold_current', 'hold_effort'],
  ['hold_effort', 'hold_current'],
  ['screw_diameter', 'screw_lead'],
  ['screw_lead', 'screw_diameter'],
];

function checkPairs({ reading, columns, report }: SheetContext): void {
  const field = (name: string) => columns.find((column) => column.name === name);
  const isGiven = (name: string) => {
    const found = field(name);
    return found !== undefined && !reading.isBlank(found.property) && !reading.failed.has(found.property);
  };
  for (const [part, whole] of pairs) {
    const other = field(whole);
    if (isGiven(part) && other !== undefined && reading.isBlank(other.property))
      report(reading.at(part), partWithoutWhole(part, whole));
  }
  needWhen('rides_on_feature', true, ['ride_distance']);
  needWhen('supply', 'regulated', ['regulator_voltage']);
  idleUnless('rides_on_feature', true, ['ride_distance'], 'rides_on_feature is no');
  idleWithout('noise', 'noise_distance');
  idleUnless('supply', 'regulated', ['regulator_voltage', 'regulator_limit'], 'supply is pack');

  function needWhen(name: string, value: string | boolean, needed: string[]): void {
    if (reading.values.get(field(name)!.property) !== value) return;
    for (const column of needed.map((needs) => field(needs)!)) {
      if (!reading.isBlank(column.property)) continue;
      const word = typeof value === 'boolean' ? 'yes' : value;
      report(reading.at(column.name), say.neededBy(column.name, `${name} is ${word}`, column.how));
      reading.failed.add(column.property);
    }
  }

  function idleWithout(whole: string, part: string): void {
    const { written, origin } = reading.provenance.get(field(part)!.property) ?? {};
    if (origin === 'given' && reading.isBlank(field(whole)!.property))
      report(reading.at(part), say.notUsed(part, written ?? '', `${whole} is blank`));
  }

  function idleUnless(name: string, value: string | boolean, idle: string[], because: string): void {
    if (reading.values.get(field(name)!.property) === value) return;
    for (const column of idle.filter(isGiven)) {
      const { written } = reading.provenance.get(field(column)!.property)!;
      report(reading.at(column), say.notUsed(column, written ?? '', because));
    }
  }
}

/** Values that a rule takes from other cells and the table of assumptions. */
function takeByRule({ reading, columns, kind, assumptions }: SheetContext): void {
  const take = (name: string, item: string) => {
    const field = columns.find((column) => column.name === name);
    const assumption = assumptions.find('drive', kind, item);
    if (field !== undefined && assumption !== null) reading.assume(field, assumption);
  };
  const voltage = reading.number('ratedVoltageV');
  const ratio = assumptions.of('drive', kind, 'maximum_voltage_ratio');
  const maximum = columns.find(({ name }) => name === 'maximum_voltage')!;
  if (voltage !== null) {
    const basis = `${ratio.written} × rated voltage, ${ratio.basis}`;
    reading.derive(maximum, voltage * (ratio.value as number), basis, 'assumed');
  }
  const switched = reading.text('control') === 'switched';
  take('idle_current', switched ? 'idle_current_switched' : 'idle_current_with_driver');
  if (reading.number('leadAngleRad') !== null || reading.number('screwLeadM') !== null) {
    for (const name of ['pressure_angle', 'flank_angle', 'friction_running', 'friction_static'])
      take(name, name);
  }
  if (reading.number('collarDiameterM') !== null) take('collar_friction', 'collar_friction');
}

/** A hold current is read with the idle current in it. */
function checkHoldCurrent({ reading, columns, report }: SheetContext): void {
  const [holdA, idleA] = [reading.number('holdCurrentA'), reading.number('idleCurrentA')];
  if (holdA === null || idleA === null || holdA >= idleA) return;
  const hold = reading.provenance.get('holdCurrentA')!;
  const idle = reading.provenance.get('idleCurrentA')!;
  const { how } = columns.find(({ name }) => name === 'idle_current')!;
  report(reading.at('hold_current'), say.holdBelowIdle(hold.shown, idle.shown, idle.origin === 'given', how));
}

/** What a change needs beyond the drive itself; the drive of today needs nothing more. */
function takeCosts({ reading, columns, kind, isBaseline, assumptions }: SheetContext): void {
  for (const name of ['electronics_mass', 'extra_cost', 'rework_hours']) {
    const field = columns.find((column) => column.name === name)!;
    if (isBaseline) reading.derive(field, 0, 'the drive of today needs nothing more', 'assumed');
    else reading.assume(field, assumptions.of('drive', kind, `change_${name}`));
  }
}
