import { describe, expect, it } from 'vitest';
import {
  doubled,
  packsInParallel,
  packsInTurn,
  prospectiveCurrentsA,
} from '../../../src/assess/lesser-changes/second-pack.js';
import { packModel } from '../../../src/simulate/pack-model.js';
import { busAtV, relaxingOhmAt } from '../../../src/simulate/supply-state.js';
import { plainPack, plainStudy } from '../../simulate/plain-study.js';
import { proposed, reasonOf, runOf, setupOf, tools } from './tools.js';

const noLeads = { ...plainStudy().wiring, lengthM: 0, switchResistanceOhm: 0, connectorResistanceOhm: 0 };
const pack = plainPack('lipo', { massKg: 0.13, priceMoney: 19 });

describe('two packs in parallel', () => {
  it('hold twice the charge', () => {
    const [one, two] = [pack, doubled(pack)].map((of) => packModel(of, noLeads, 298.15, null)) as [
      ReturnType<typeof packModel>,
      ReturnType<typeof packModel>,
    ];
    expect(two.cellChargeC * two.parallelCount).toBeCloseTo(2 * one.cellChargeC * one.parallelCount, 9);
  });

  it('sag half as much under the same current, at once and after a while', () => {
    const [one, two] = [pack, doubled(pack)].map((of) => packModel(of, noLeads, 298.15, null));
    const sagV = (of: typeof one) => busAtV(of!, 0.6, 0, 0, 0) - busAtV(of!, 0.6, 0, 0, 4);
    expect(sagV(one)).toBeGreaterThan(0.1);
    expect(sagV(two)).toBeCloseTo(sagV(one) / 2, 9);
    expect(relaxingOhmAt(two!, 0.6)).toBeCloseTo(relaxingOhmAt(one!, 0.6) / 2, 12);
  });

  it('run a little more than twice as long', () => {
    const setup = setupOf({ pack });
    const before = tools.simulate(setup.study, setup.candidate).nominal.runtimeS!;
    const after = runOf(proposed(packsInParallel, setup)).nominal.runtimeS!;
    expect(after).toBeGreaterThan(1.999 * before);
    expect(after).toBeLessThan(2.1 * before);
  });

  it('come with their conditions: type, age, 0.05 V per cell, a fuse each', () => {
    const fused = setupOf({ pack, wiring: { ...noLeads, fuseRatingA: 7.5 } });
    const text = proposed(packsInParallel, fused).actions.join(' ');
    expect(text).toMatch(/same type, same age/);
    expect(text).toMatch(/within 0\.05 V per cell \(0\.10 V for the pack\)/);
    expect(text).toMatch(/each its own fuse of 7\.5 A/);
  });

  it('nearly double the prospective fault current where leads are short', () => {
    const { oneA, bothA, joiningA } = prospectiveCurrentsA({ ...plainStudy({ pack }), wiring: noLeads });
    // 120 mΩ·Ah over 2.2 Ah, 60 % of it at once, two cells in series: 65.5 mΩ.
    const ohm = (2 * 0.6 * 0.12) / 2.2;
    expect(oneA).toBeCloseTo(8.4 / ohm, 9);
    expect(bothA).toBeCloseTo((2 * 8.4) / ohm, 9);
    expect(joiningA).toBeCloseTo(0.1 / (2 * ohm), 9);
  });

  it('cost a lead where both are carried already, else a pack as well', () => {
    const have = proposed(packsInParallel, setupOf({ pack, packsCarriedCount: 2 }));
    const lack = proposed(packsInParallel, setupOf({ pack, packsCarriedCount: 1 }));
    expect(lack.burden.massKg - have.burden.massKg).toBeCloseTo(0.13, 12);
    expect(lack.burden.costMoney! - have.burden.costMoney!).toBeCloseTo(19, 12);
    expect([have.packsInTurnCount, lack.packsInTurnCount]).toEqual([1, 1]);
  });

  it.each([1, 2, 3, 5])(
    '%d carried packs weigh the same joined, but for the lead and what was lacking',
    (carried) => {
      const setup = setupOf({ pack, packsCarriedCount: carried });
      const joined = proposed(packsInParallel, setup);
      const massKg = (of: typeof setup) => tools.simulate(of.study, of.candidate).nominal.bodyMassKg!;
      const addedKg = massKg(joined.setup) + joined.addedBodyMassKg - massKg(setup);
      expect(addedKg).toBeCloseTo(joined.burden.massKg, 12);
      expect(joined.packsInTurnCount).toBe(Math.max(1, Math.floor(carried / 2)));
    },
  );

  it('cost an unknown sum where the price of the pack is not given', () => {
    const lack = proposed(packsInParallel, setupOf({ pack: plainPack('lipo') }));
    expect(lack.burden.costMoney).toBeNull();
  });
});

describe('a second pack to swap', () => {
  it('leaves the drive as it is and plays twice as long in all', () => {
    const setup = setupOf({ pack });
    const proposal = proposed(packsInTurn, setup);
    expect(proposal.setup).toBe(setup);
    expect(proposal.packsInTurnCount).toBe(2);
    expect(proposal.addedBodyMassKg).toBeCloseTo(proposal.burden.massKg, 12);
    expect(proposal.burden.massKg).toBeGreaterThan(0.13);
  });

  it('is left out where two are carried already', () => {
    expect(reasonOf(packsInTurn.propose(setupOf({ packsCarriedCount: 2 })))).toMatch(/2 packs come along/);
  });
});
