import { describe, expect, it } from 'vitest';
import { driveKinds, leadingColumns } from '../../src/drives/columns.js';
import { driveTypes } from '../../src/drives/registry.js';
import type { DriveKind } from '../../src/drives/sheet.js';
import { neutralSheet } from '../../src/input/neutral-sheet.js';
import type { FieldDeclaration } from '../../src/quantity/field.js';
import { criterionFields, measuredFields } from '../../src/study/choosing-fields.js';
import { studyFields } from '../../src/study/fields.js';
import { dayFields, showFields } from '../../src/study/show-fields.js';
import { loadFields, packFields } from '../../src/study/supply-fields.js';

const names = (fields: readonly FieldDeclaration[]) => fields.map(({ name }) => name);
const withPresence = (kind: DriveKind, presence: string) =>
  names(driveTypes[kind].columns.filter((field) => field.presence === presence));

const everything = [
  ...studyFields('hinge'),
  ...studyFields('slide'),
  ...driveKinds.flatMap((kind) => driveTypes[kind].columns),
  ...showFields('hinge'),
  ...packFields,
  ...loadFields,
  ...criterionFields,
  ...dayFields,
  ...measuredFields,
];

describe('the field table', () => {
  it('says of every field what it means and how to find it', () => {
    for (const { name, meaning, how } of everything) {
      expect(meaning.length, name).toBeGreaterThan(5);
      expect(how.length, name).toBeGreaterThan(5);
    }
  });

  it('has a basis for everything that is assumed', () => {
    for (const { name, presence, basis } of everything)
      if (presence === 'assumed') expect(basis, name).not.toBe('');
  });

  it.each(driveKinds)('fills the sheet of a %s: every column has its own property', (kind) => {
    const columns = driveTypes[kind].columns.slice(leadingColumns.length);
    const properties = columns.map(({ property }) => property);
    expect(new Set(properties).size).toBe(properties.length);
    for (const property of properties) expect(Object.keys(neutralSheet)).toContain(property);
  });

  it('leaves no property of a sheet without a column', () => {
    const properties = driveKinds.flatMap((kind) => driveTypes[kind].columns.map(({ property }) => property));
    const orphans = Object.keys(neutralSheet).filter((property) => !properties.includes(property));
    expect(orphans).toEqual(['otherVoltages']);
  });

  it('requires of each type what a listing must state', () => {
    expect(withPresence('position-servo', 'required')).toEqual([
      'id',
      'type',
      'rated_voltage',
      'no_load_speed',
      'stall_torque',
    ]);
    expect(withPresence('worm-gearmotor', 'required')).toEqual([
      'id',
      'type',
      'rated_voltage',
      'no_load_speed',
    ]);
    expect(withPresence('worm-gearmotor', 'either')).toEqual([
      'stall_torque',
      'rated_torque',
      'rated_speed',
      'rated_current',
    ]);
    expect(withPresence('screw-actuator', 'required')).toEqual([
      'id',
      'type',
      'rated_voltage',
      'no_load_speed',
      'stroke',
    ]);
    expect(withPresence('screw-actuator', 'either')).toEqual([
      'stall_force',
      'rated_force',
      'rated_speed',
      'rated_current',
    ]);
  });

  it('keeps strut and stroke from rotary drives, and worm geometry from servos and screws', () => {
    for (const kind of ['position-servo', 'worm-gearmotor'] as const)
      for (const name of ['stroke', 'closed_length', 'strut_side', 'screw_lead', 'stall_force'])
        expect(names(driveTypes[kind].columns)).not.toContain(name);
    for (const kind of ['position-servo', 'screw-actuator'] as const)
      expect(names(driveTypes[kind].columns)).not.toContain('lead_angle');
  });

  it('requires of a study what the answer cannot do without', () => {
    const required = names(studyFields('hinge').filter(({ presence }) => presence === 'required'));
    expect(required).toEqual([
      'question',
      'project',
      'feature.mass',
      'feature.balance_distance',
      'feature.tip_distance',
      'feature.lower_stop',
      'feature.upper_stop',
      'pack.choice',
    ]);
  });

  it('has ranges that make sense: usual inside possible', () => {
    for (const { name, plausible, bounds } of everything) {
      if (plausible === null || bounds === null) continue;
      expect(plausible.low, name).toBeGreaterThanOrEqual(bounds.low - 1e-12);
      expect(plausible.high, name).toBeLessThanOrEqual(bounds.high + 1e-12);
      expect(plausible.low, name).toBeLessThan(plausible.high);
    }
  });
});
