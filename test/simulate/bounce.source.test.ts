import { expect, it } from 'vitest';
import { bounceFractions } from '../../src/simulate/mechanics.js';

/*
 * Keller et al. 1996, Clinical Biomechanics 11(5):253–259: vertical ground reaction while walking peaks at about
 * 1.2 body weights. A feature on a harness must be counted with at least that.
 */
it('counts walking with at least the measured 1.2 × gravity, and every livelier carrier with more', () => {
  expect(1 + bounceFractions.walk).toBeGreaterThanOrEqual(1.2);
  expect(1 + bounceFractions.walk).toBeLessThan(1.4);
  const order = [
    bounceFractions.stand,
    bounceFractions.walk,
    bounceFractions.brisk,
    bounceFractions.dance,
    bounceFractions.jump,
  ];
  expect(order).toEqual([...order].sort((p, q) => p - q));
});
