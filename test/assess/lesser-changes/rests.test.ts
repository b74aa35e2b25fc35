import { describe, expect, it } from 'vitest';
import { holdLatch } from '../../../src/assess/lesser-changes/hold-latch.js';
import { restOnStop } from '../../../src/assess/lesser-changes/rest-on-stop.js';
import { plainCandidate, plainCue } from '../../simulate/plain-study.js';
import { proposed, reasonOf, runOf, setupOf, tools, withFeature } from './tools.js';

const degrees = Math.PI / 180;
const idleW = 0.01 * 7.4;

/** Raise, hold at 60° for 20 s, hold at 30° for 30 s in two cues, lower, hold on the lower stop for 10 s. */
const loop = () => {
  const move = (from: number, to: number) =>
    plainCue({ action: 'move', fromPosition: from * degrees, toPosition: to * degrees, durationS: 2 });
  const hold = (name: string, at: number, durationS: number) =>
    plainCue({ name, fromPosition: at * degrees, durationS });
  return [
    move(0, 60),
    hold('high', 60, 20),
    move(60, 30),
    hold('middle', 30, 12),
    hold('middle again', 30, 18),
    move(30, 0),
    hold('low', 0, 10),
  ];
};
const show = { leadIn: [], loop: loop() };

describe('resting on a stop with the power off', () => {
  const setup = setupOf({ show });
  const proposal = proposed(restOnStop, setup);

  it('turns the holds on the stop into rests and leaves the others', () => {
    const actions = proposal.setup.study.show.loop.map(({ action }) => action);
    expect(actions).toEqual(['move', 'hold', 'move', 'hold', 'hold', 'move', 'rest']);
    expect(proposal.setup.candidate.sheet.poweredAtRest).toBe(false);
  });

  it('counts the former hold as drawing nothing', () => {
    const before = tools.simulate(setup.study, setup.candidate).nominal.holdPowerW;
    const simulated = tools.simulate(proposal.setup.study, proposal.setup.candidate).nominal.holdPowerW;
    const after = runOf(proposal).nominal.holdPowerW;
    // 50 of 60 seconds are still held.
    expect(after).toBeCloseTo((simulated * 50) / 60, 12);
    expect(after).toBeLessThan(before);
  });

  it('takes a latch for a stop, and an upper stop only where the feature stays on it', () => {
    const latched = withFeature({ latchPosition: 30 * degrees, upperStopPosition: 60 * degrees }, { show });
    const actions = proposed(restOnStop, latched).setup.study.show.loop.map(({ action }) => action);
    expect(actions).toEqual(['move', 'hold', 'move', 'rest', 'rest', 'move', 'rest']);
  });

  it('is left out where the power is off already', () => {
    const off = setupOf({ candidates: [plainCandidate('position-servo', { poweredAtRest: false })] });
    expect(reasonOf(restOnStop.propose(off))).toMatch(/off already/);
  });
});

describe('a latch', () => {
  const setup = setupOf({ show });
  const proposal = proposed(holdLatch, setup);

  it('sits at the pose with the most hold time of all its cues', () => {
    expect(proposal.setup.study.feature.latchPosition).toBeCloseTo(30 * degrees, 12);
    expect(proposal.title).toBe('A latch at 30°');
    expect(proposal.actions[0]).toMatch(/“middle” and “middle again” hold it for 30 s/);
  });

  it('leaves the idle draw of the drive during the former hold', () => {
    const simulated = tools.simulate(proposal.setup.study, proposal.setup.candidate).nominal.holdPowerW;
    expect(runOf(proposal).nominal.holdPowerW).toBeCloseTo((simulated * 30 + idleW * 30) / 60, 12);
  });

  it('must bear the weight with the bounce of the carrier', () => {
    const walking = setupOf({
      show,
      carrier: { worn: true, activity: 'walk', leanRad: 0, bodyMassKg: null },
    });
    const newtonMetres = 0.3 * 9.80665 * 0.15 * Math.cos(30 * degrees) * 1.3;
    const text = proposed(holdLatch, walking).actions[1];
    expect(text).toContain(`${newtonMetres.toFixed(3)} N·m`);
    expect(text).toContain(`${(newtonMetres / 0.1).toFixed(2)} N at 100 mm`);
  });

  it('is not proposed where a stop bears the load, or the drive holds unpowered', () => {
    const low = [plainCue({ fromPosition: 0, durationS: 30 })];
    expect(reasonOf(holdLatch.propose(setupOf({ show: { leadIn: [], loop: low } })))).toMatch(/no pose/);
    const worm = plainCandidate('worm-gearmotor', { poweredAtHold: false, backdrivesAtEffort: 20 });
    expect(reasonOf(holdLatch.propose(setupOf({ candidates: [worm] })))).toMatch(/power off already/);
  });
});
