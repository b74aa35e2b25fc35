import { describe, expect, it } from 'vitest';
import type { CalculationLine } from '../../src/assess/assessment.js';
import { working } from '../../src/assess/working.js';
import type { DriveKind, DriveSheet } from '../../src/drives/sheet.js';
import { simulateCandidate } from '../../src/simulate/candidate.js';
import { plainCue } from '../simulate/plain-study.js';
import { candidate, study } from './hand-made.js';
import { calculated } from './pocket-calculator.js';

const show = {
  leadIn: [],
  loop: [
    plainCue({ name: 'up', action: 'move', fromPosition: 0.2, toPosition: 0.8, durationS: 4 }),
    plainCue({ name: 'high', fromPosition: 0.8, durationS: 20 }),
    plainCue({ name: 'down', action: 'move', fromPosition: 0.8, toPosition: 0.2, durationS: 4 }),
    plainCue({ name: 'low', fromPosition: 0.2, durationS: 20 }),
  ],
};

const kinds: [name: string, kind: DriveKind, sheet: Partial<DriveSheet>][] = [
  ['a servo', 'position-servo', { stallEffort: 12, stallCurrentA: 5, noiseDistanceM: 0.5 }],
  [
    'a servo with a measured hold current',
    'position-servo',
    { holdCurrentA: 0.5, holdEffort: 2, stallEffort: 12, stallCurrentA: 5 },
  ],
  [
    'a servo that was measured to hold for nothing',
    'position-servo',
    { holdCurrentA: 0.01, holdEffort: 2, stallEffort: 12, stallCurrentA: 5 },
  ],
  [
    'a servo behind a regulator',
    'position-servo',
    {
      stallEffort: 12,
      stallCurrentA: 5,
      idleCurrentA: 0.02,
      supply: 'regulated',
      regulatorVoltageV: 7.4,
      regulatorEfficiency: 0.88,
    },
  ],
  [
    'a worm drive with gaps in its sheet',
    'worm-gearmotor',
    { stallCurrentA: null, noLoadCurrentA: null, stallEffort: 10 },
  ],
  [
    'a worm drive whose stated gear efficiency is below what its listing implies',
    'worm-gearmotor',
    { gearEfficiency: 0.2, stallEffort: 10 },
  ],
  [
    'a worm drive whose stated gear efficiency is above what its listing implies',
    'worm-gearmotor',
    { gearEfficiency: 0.8, stallEffort: 5 },
  ],
  [
    'a worm drive with a stated gear efficiency and gaps in its sheet',
    'worm-gearmotor',
    { gearEfficiency: 0.5, stallCurrentA: null, noLoadCurrentA: null, stallEffort: 10 },
  ],
  [
    'a switched worm drive by its rated point',
    'worm-gearmotor',
    {
      control: 'switched',
      stallEffort: null,
      stallCurrentA: null,
      ratedEffort: 3,
      ratedSpeed: 1.2,
      ratedCurrentA: 1.4,
    },
  ],
  [
    'a worm drive whose power is off while it holds',
    'worm-gearmotor',
    { poweredAtHold: false, backdrivesAtEffort: 50 },
  ],
  [
    'a screw on a strut',
    'screw-actuator',
    {
      noLoadSpeed: 0.03,
      stallEffort: 400,
      coupling: 'strut',
      strutFrameArmM: 0.18,
      strutFeatureArmM: 0.06,
      strutLevelAngleRad: 1.4,
      strokeM: 0.1,
    },
  ],
];

function linesOf(kind: DriveKind, sheet: Partial<DriveSheet>): CalculationLine[] {
  const one = { ...candidate('a', sheet), kind };
  const of = study([one], [], { show });
  return working(of, one, simulateCandidate(of, one));
}

describe.each(kinds)('the working of %s', (_, kind, sheet) => {
  const lines = linesOf(kind, sheet);

  it('goes from the data sheet to the minutes', () => {
    expect([...new Set(lines.map(({ section }) => section))]).toEqual([
      'Motor',
      'Hold “high” at 45.8°',
      'Hold “low” at 11.5°',
      'Pack and runtime',
      'Torque margin',
      'Mass',
      'Cost',
      'Noise',
    ]);
  });

  it('names quantity, equation, numbers, result and source on every line', () => {
    expect(lines.flatMap((line) => Object.values(line)).filter((text) => text === '')).toEqual([]);
    expect(lines.filter(({ result }) => /NaN|undefined|Infinity|–/.test(result))).toEqual([]);
  });

  it('adds up on a pocket calculator', () => {
    let compared = 0;
    for (const line of lines) {
      const by = calculated(line.numbers);
      const result = calculated(line.result.replace(/ \(.*/, ''));
      if (by === null || result === null) continue;
      compared++;
      const close = Math.abs(by - result) <= 0.02 * Math.abs(result) + 0.006;
      expect(close, `${line.quantity}: ${line.numbers} gives ${by}, not ${line.result}`).toBe(true);
    }
    expect(compared).toBeGreaterThan(10);
  });
});

it('the working of a pose in balance says why no current flows, instead of a formula that gives another', () => {
  const upright = {
    ...show,
    loop: [plainCue({ name: 'upright', fromPosition: Math.PI / 2, durationS: 20 })],
  };
  const one = { ...candidate('a'), kind: 'position-servo' as const };
  const of = study([one], [], { show: upright });
  const lines = working(of, one, simulateCandidate(of, one));
  const currents = lines.filter(
    ({ section, source }) => section.startsWith('Hold') && /^M1[2-5]/.test(source),
  );
  expect(currents).toEqual([
    expect.objectContaining({
      quantity: 'Motor current',
      numbers: expect.stringContaining('balance'),
      result: '0 A',
    }),
  ]);
});

it('behind a regulator the working ends at the pack: its current, its power and the energy of the holds follow', () => {
  const [, kind, sheet] = kinds.find(([name]) => name === 'a servo behind a regulator')!;
  const one = { ...candidate('a', sheet), kind };
  const held = { leadIn: [], loop: [show.loop[0]!, show.loop[1]!] };
  const of = study([one], [], { show: held });
  const run = simulateCandidate(of, one);
  const resultOf = (quantity: string) =>
    calculated(working(of, one, run).find((line) => line.quantity === quantity)?.result ?? '');
  const { holdPackCurrentA, holdCurrentPulseModelA, holdPackCurrentPulseModelA, holdPowerW } = run.nominal;
  expect(resultOf('Current of one drive, behind the regulator')).toBeCloseTo(holdCurrentPulseModelA, 3);
  expect(resultOf('Pack current of one drive')).toBeCloseTo(holdPackCurrentA, 3);
  expect(holdPackCurrentPulseModelA).toBeCloseTo(holdPackCurrentA, 12);
  expect(holdPackCurrentA).toBeCloseTo(
    ((holdCurrentPulseModelA + 0.02) * 7.4) / (0.88 * of.pack.seriesCount * 3.6),
    9,
  );
  expect(resultOf('Power of all drives while holding')).toBeCloseTo(holdPowerW, 2);
  expect(resultOf('Energy of the holds of one loop')).toBeCloseTo(run.nominal.energy!.drivesHoldingJ, 1);
});

it('a pocket calculator reads the sums of the working', () => {
  expect(calculated('(12 V − 200 mA · 3 Ω) / 2 rad/s')).toBeCloseTo(5.7, 12);
  expect(calculated('1 kg·m · 9.80665 m/s² · cos(60° + 0°)')).toBeCloseTo(4.903325, 9);
  expect(calculated('180 mm · 60 mm · sin 90 deg / 190 mm')).toBeCloseTo((0.18 * 0.06) / 0.19, 12);
  expect(calculated('(2 − 0.65^(−1/4))^4')).toBeCloseTo((2 - 0.65 ** -0.25) ** 4, 12);
  expect(calculated('geometry as listed')).toBeNull();
});
