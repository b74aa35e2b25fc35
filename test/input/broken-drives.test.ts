import { describe, expect, it } from 'vitest';
import { expectIssue } from './expect-issue.js';
import { type BrokenCase, type Files, issuesIn, withFile } from './good-study.js';

/** The good study with candidates as objects; columns are what the first names. Their rows start in line 2. */
function candidates(...rows: Record<string, string>[]): Files {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const lines = rows.map((row) => columns.map((column) => row[column] ?? '').join(','));
  return withFile('candidates.csv', `${[columns.join(','), ...lines].join('\n')}\n`);
}

const servo = {
  id: 'servo-a',
  type: 'position-servo',
  rated_voltage: '7.4 V',
  no_load_speed: '0.2 s/60deg',
  stall_torque: '35 kg·cm',
  stall_current: '4 A',
};
const worm = {
  id: 'worm-a',
  type: 'worm-gearmotor',
  rated_voltage: '12 V',
  no_load_speed: '15 rpm',
  stall_torque: '60 kg·cm',
};
/** A loaded point of the worm instead of its stall figure. */
const ratedWorm = { stall_torque: '', rated_torque: '20 kg·cm', rated_speed: '10 rpm', rated_current: '1 A' };
const screw = {
  id: 'screw-a',
  type: 'screw-actuator',
  rated_voltage: '12 V',
  no_load_speed: '20 mm/s',
  stall_force: '200 N',
  stroke: '100 mm',
};
const at = (line: number, column: string) => ({ file: 'candidates.csv', line, column });

const cases: BrokenCase[] = [
  {
    title: 'an unknown type',
    files: candidates(servo, { ...worm, type: 'worm-motor' }),
    code: 'unknown-choice',
    ...at(3, 'type'),
    hint: 'did you mean worm-gearmotor?',
  },
  {
    title: 'a missing voltage',
    files: candidates(servo, { ...worm, rated_voltage: '' }),
    code: 'blank-required',
    ...at(3, 'rated_voltage'),
    hint: 'from the listing',
  },
  {
    title: 'a servo without stall torque',
    files: candidates({ ...servo, stall_torque: '' }),
    code: 'blank-required',
    ...at(2, 'stall_torque'),
    hint: 'luggage scale',
  },
  {
    title: 'a screw without stroke',
    files: candidates(servo, { ...screw, stroke: '' }),
    code: 'blank-required',
    ...at(3, 'stroke'),
    hint: 'a ruler on the rod',
  },
  {
    title: 'neither stall nor rated point',
    files: candidates(servo, { ...worm, stall_torque: '' }),
    code: 'no-loaded-point',
    ...at(3, 'stall_torque'),
    hint: 'complete the rated point',
  },
  {
    title: 'a rated point with a part missing',
    files: candidates(servo, { ...worm, stall_torque: '', rated_torque: '20 kg·cm', rated_speed: '10 rpm' }),
    code: 'no-loaded-point',
    ...at(3, 'stall_torque'),
    hint: 'complete the rated point',
  },
  {
    title: 'half a rated point beside a stall figure',
    files: candidates(servo, { ...worm, rated_torque: '20 kg·cm' }),
    code: 'rated-point-incomplete',
    severity: 'warning',
    ...at(3, 'rated_torque'),
    hint: 'complete it',
  },
  {
    title: 'more current free than stalled',
    files: candidates({ ...servo, no_load_current: '6 A', stall_current: '5 A' }),
    code: 'crossed-figures',
    ...at(2, 'no_load_current'),
    hint: 'no_load_current has to be below stall_current',
  },
  {
    title: 'as much current free as stalled',
    files: candidates({ ...servo, no_load_current: '5 A', stall_current: '5 A' }),
    code: 'crossed-figures',
    ...at(2, 'no_load_current'),
    hint: 'no_load_current has to be below stall_current',
  },
  {
    title: 'a loaded point faster than no load',
    files: candidates(servo, { ...worm, ...ratedWorm, rated_speed: '20 rpm' }),
    code: 'crossed-figures',
    ...at(3, 'rated_speed'),
    hint: 'rated_speed has to be below no_load_speed',
  },
  {
    title: 'less current loaded than free',
    files: candidates(servo, { ...worm, ...ratedWorm, no_load_current: '1.2 A', rated_current: '1 A' }),
    code: 'crossed-figures',
    ...at(3, 'no_load_current'),
    hint: 'no_load_current has to be below rated_current',
  },
  {
    title: 'a loaded point that pushes harder than a stall',
    files: candidates(servo, { ...worm, ...ratedWorm, stall_torque: '15 kg·cm' }),
    code: 'crossed-figures',
    ...at(3, 'rated_torque'),
    hint: 'rated_torque has to be below stall_torque',
  },
  {
    title: 'a loaded point that draws more than a stall',
    files: candidates(servo, { ...worm, ...ratedWorm, stall_torque: '60 kg·cm', stall_current: '0.9 A' }),
    code: 'crossed-figures',
    ...at(3, 'rated_current'),
    hint: 'rated_current has to be below stall_current',
  },
  {
    title: 'a crossing at another voltage only',
    files: candidates(
      { ...servo, no_load_current: '0.3 A' },
      { ...servo, rated_voltage: '6 V', no_load_current: '4.5 A' },
    ),
    code: 'crossed-figures',
    ...at(3, 'no_load_current'),
    hint: 'no_load_current has to be below stall_current',
  },
  {
    title: 'a stroke on a servo',
    files: candidates({ ...servo, stroke: '50 mm' }),
    code: 'not-applicable',
    ...at(2, 'stroke'),
    hint: 'empty the cell',
  },
  {
    title: 'a thread on a worm',
    files: candidates(servo, { ...worm, screw_lead: '2 mm' }),
    code: 'not-applicable',
    ...at(3, 'screw_lead'),
    hint: 'empty the cell',
  },
  {
    title: 'a force on a rotary drive',
    files: candidates(servo, { ...worm, stall_force: '20 N' }),
    code: 'not-applicable',
    ...at(3, 'stall_force'),
    hint: 'empty the cell',
  },
  {
    title: 'a hold current without what was held',
    files: candidates({ ...servo, hold_current: '0.5 A' }),
    code: 'part-without-whole',
    ...at(2, 'hold_current'),
    hint: 'hold_effort',
  },
  {
    title: 'a held load without its current',
    files: candidates({ ...servo, hold_effort: '1 N·m' }),
    code: 'part-without-whole',
    ...at(2, 'hold_effort'),
    hint: 'hold_current',
  },
  {
    title: 'a held load of nothing',
    files: candidates({ ...servo, hold_current: '0.3 A', hold_effort: '0 N·m' }),
    code: 'out-of-bounds',
    ...at(2, 'hold_effort'),
    hint: 'check the figure',
  },
  {
    title: 'less current under a load than with none',
    files: candidates({ ...servo, hold_current: '5 mA', hold_effort: '2 N·m', idle_current: '12 mA' }),
    code: 'hold-below-idle',
    ...at(2, 'hold_current'),
    hint: 'read both again',
  },
  {
    title: 'less current under a load than is assumed with none',
    files: candidates({ ...servo, hold_current: '6 mA', hold_effort: '2 N·m' }),
    code: 'hold-below-idle',
    ...at(2, 'hold_current'),
    hint: 'give idle_current',
  },
  {
    title: 'a rod straight on a hinge',
    files: candidates(servo, { ...screw, coupling: 'direct' }),
    code: 'coupling-impossible',
    ...at(3, 'coupling'),
    hint: 'set coupling to strut',
  },
  {
    title: 'a strut on a servo',
    files: candidates({ ...servo, coupling: 'strut' }),
    code: 'unknown-choice',
    ...at(2, 'coupling'),
    hint: 'direct, geared or spool',
  },
  {
    title: 'gears without their ratio',
    files: candidates({ ...servo, coupling: 'geared' }),
    code: 'blank-required',
    ...at(2, 'coupling_ratio'),
    hint: 'count the teeth',
  },
  {
    title: 'a ratio without gears',
    files: candidates({ ...servo, coupling_ratio: '2' }),
    code: 'not-used',
    severity: 'warning',
    ...at(2, 'coupling_ratio'),
    hint: 'empty the cell',
  },
  {
    title: 'a spool on a hinge',
    files: candidates({ ...servo, coupling: 'spool', spool_radius: '10 mm' }),
    code: 'coupling-impossible',
    ...at(2, 'coupling'),
    hint: 'direct or geared',
  },
  {
    title: 'one pivot of a strut',
    files: candidates(servo, { ...screw, strut_frame_arm: '120 mm' }),
    code: 'part-without-whole',
    ...at(3, 'strut_frame_arm'),
    hint: 'strut_feature_arm',
  },
  {
    title: 'a regulator without its voltage',
    files: candidates({ ...servo, supply: 'regulated' }),
    code: 'blank-required',
    ...at(2, 'regulator_voltage'),
    hint: 'a multimeter',
  },
  {
    title: 'a regulator that is not there',
    files: candidates({ ...servo, regulator_voltage: '6 V' }),
    code: 'not-used',
    severity: 'warning',
    ...at(2, 'regulator_voltage'),
    hint: 'change that',
  },
  {
    title: 'a drive that rides, nobody knows where',
    files: candidates({ ...servo, rides_on_feature: 'yes' }),
    code: 'blank-required',
    ...at(2, 'ride_distance'),
    hint: 'a ruler',
  },
  {
    title: 'a switched servo',
    files: candidates({ ...servo, control: 'switched' }),
    code: 'unknown-choice',
    ...at(2, 'control'),
    hint: 'choose position',
  },
  {
    title: 'a repeated row that contradicts the first',
    files: candidates({ ...servo, mass: '80 g' }, { ...servo, rated_voltage: '6 V', mass: '90 g' }),
    code: 'differs-from-first-row',
    ...at(3, 'mass'),
    hint: 'its own id',
  },
  {
    title: 'a thread with half its figures',
    files: candidates(servo, { ...screw, screw_lead: '2 mm' }),
    code: 'part-without-whole',
    ...at(3, 'screw_lead'),
    hint: 'screw_diameter',
  },
];

describe('figures of two voltages', () => {
  it('are not held against each other: more current free at 8.4 V than stalled at 4.8 V is no crossing', () => {
    const files = candidates(
      { ...servo, rated_voltage: '4.8 V', no_load_current: '0.2 A', stall_current: '0.5 A' },
      { ...servo, rated_voltage: '8.4 V', no_load_current: '0.6 A', stall_current: '5 A' },
    );
    expect(issuesIn(files).filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

describe('a broken candidate is named', () => {
  it.each(cases)('$title', expectIssue);
});
