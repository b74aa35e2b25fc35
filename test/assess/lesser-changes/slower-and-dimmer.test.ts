import { describe, expect, it } from 'vitest';
import { dimmerLights } from '../../../src/assess/lesser-changes/dimmer-lights.js';
import { muchSlowerMoves, slowed, slowerMoves } from '../../../src/assess/lesser-changes/slower-moves.js';
import type { Load } from '../../../src/study/supply.js';
import { plainCandidate, plainCue, plainLoop } from '../../simulate/plain-study.js';
import { proposed, reasonOf, runOf, setupOf, tools } from './tools.js';

const lengthS = (cues: { durationS: number }[]) => cues.reduce((sum, { durationS }) => sum + durationS, 0);

describe('slower moves', () => {
  it.each([
    ['a quarter', slowerMoves, 1.25],
    ['a half', muchSlowerMoves, 1.5],
  ])('%s slower leave the loop as long as it was', (_, kind, factor) => {
    const setup = setupOf();
    const { loop } = proposed(kind, setup).setup.study.show;
    expect(lengthS(loop)).toBeCloseTo(lengthS(setup.study.show.loop), 9);
    expect(loop[0]!.durationS).toBeCloseTo(factor * 2, 12);
    // 20 s of hold give what both moves take; the rest keeps its 6 s.
    expect(loop.map(({ durationS }) => durationS)[1]).toBeCloseTo(20 - 4 * (factor - 1), 12);
    expect(loop[3]!.durationS).toBe(6);
  });

  it('take from the rests too where the holds are too short, and give up where all are', () => {
    const cues = [
      plainCue({ action: 'move', toPosition: 1, durationS: 10 }),
      plainCue({ fromPosition: 1, durationS: 2.5 }),
      plainCue({ action: 'rest', fromPosition: 1, durationS: 2.5 }),
    ];
    expect(slowed(cues, 1.25)!.map(({ durationS }) => durationS)).toEqual([12.5, 1.25, 1.25]);
    expect(slowed(cues, 1.9)).toBeNull();
  });

  it('owe their fidelity to the cue list as written', () => {
    const setup = setupOf();
    expect(tools.simulate(setup.study, setup.candidate).nominal.cueFidelityRatio).toBe(1);
    expect(runOf(proposed(slowerMoves, setup)).nominal.cueFidelityRatio).toBeCloseTo(1 / 1.25, 9);
  });

  it('do not make a drive faithful that cannot keep up anyway', () => {
    const slow = setupOf({ candidates: [plainCandidate('position-servo', { noLoadSpeed: 0.5 })] });
    const before = tools.simulate(slow.study, slow.candidate).nominal.cueFidelityRatio!;
    expect(before).toBeLessThan(0.6);
    expect(runOf(proposed(slowerMoves, slow)).nominal.cueFidelityRatio!).toBeCloseTo(before, 2);
  });

  it('are no use to a switched drive, nor where nothing moves', () => {
    const switched = setupOf({ candidates: [plainCandidate('worm-gearmotor', { control: 'switched' })] });
    expect(reasonOf(slowerMoves.propose(switched))).toMatch(/own speed/);
    const still = setupOf({ show: { leadIn: [], loop: [plainCue({ durationS: 9 })] } });
    expect(reasonOf(slowerMoves.propose(still))).toMatch(/no move/);
  });
});

const lamp: Load = {
  id: 'lamp',
  label: 'lamp',
  powerW: 5,
  voltageV: null,
  converterEfficiency: 0.9,
  idlePowerW: 0.1,
  drawnWhen: 'lights',
  note: '',
};

describe('dimmer lights', () => {
  const lit = plainLoop().map((cue) => ({ ...cue, lightsFraction: 1 }));
  const setup = setupOf({ show: { leadIn: [], loop: lit }, loads: [lamp] });

  it('save three tenths of the lamps and none of their idling', () => {
    const meanA = (of: typeof setup) => tools.simulate(of.study, of.candidate).nominal.meanPackCurrentA!;
    const saved = meanA(setup) - meanA(proposed(dimmerLights, setup).setup);
    expect(saved).toBeCloseTo((0.3 * 5) / 0.9 / 7.4, 9);
  });

  it('are left out where no lights follow the cue list', () => {
    const always = setupOf({ loads: [{ ...lamp, drawnWhen: 'always' }] });
    expect(reasonOf(dimmerLights.propose(always))).toMatch(/no lights/);
    const dark = setupOf({ loads: [lamp] });
    expect(reasonOf(dimmerLights.propose(dark))).toMatch(/no lights/);
  });
});
