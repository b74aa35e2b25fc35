import { describe, expect, it } from 'vitest';
import { editDistance, nearestName } from '../../src/problem/nearest-name.js';

const names = [
  'feature.mass',
  'feature.tip_distance',
  'stall_torque',
  'stall_force',
  'runtime',
  'fits',
  'position-servo',
  'mass',
];

describe('the nearest name', () => {
  // Distances worked out by hand.
  it('counts letters that were left out, added, changed or swapped', () => {
    expect(editDistance('mass', 'mass')).toBe(0);
    expect(editDistance('mas', 'mass')).toBe(1);
    expect(editDistance('maas', 'mass')).toBe(1);
    expect(editDistance('msas', 'mass')).toBe(1);
    expect(editDistance('', 'mass')).toBe(4);
  });

  it.each([
    ['stal_torque', 'stall_torque'],
    ['Stall Torque', 'stall_torque'],
    ['stall-torque', 'stall_torque'],
    ['tip_distance', 'feature.tip_distance'],
    ['run_time', 'runtime'],
    ['positionservo', 'position-servo'],
    ['fit', 'fits'],
    ['servo', 'position-servo'],
  ])('of %s is %s', (written, name) => expect(nearestName(written, names)).toBe(name));

  it.each(['colour', 'xyz', '', 'x'.repeat(500)])('of “%s” is none', (written) =>
    expect(nearestName(written, names)).toBeNull(),
  );
});
