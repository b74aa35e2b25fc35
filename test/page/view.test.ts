import { describe, expect, it } from 'vitest';
import { addressOf, commandOf, viewFrom } from '../../src/page/view.js';

const known = { criteria: ['runtime', 'cost'], limits: ['noise'], steps: ['none', 'much'] };
const view = { steps: new Map([['cost', 'none']]), off: new Set(['noise']) };

describe('a view in an address', () => {
  it('comes back as it was', () => {
    expect(addressOf(view)).toBe('cost=none&off=noise');
    expect(viewFrom(`#${addressOf(view)}`, known)).toEqual(view);
  });

  it('is none in a link to a place of the page', () => {
    expect([viewFrom('#answer', known), viewFrom('', known)]).toEqual([null, null]);
  });

  it('holds only what the page knows', () => {
    expect(viewFrom('#runtime=loads&mass=much&off=cost&off=noise', known)).toEqual({
      steps: new Map(),
      off: new Set(['noise']),
    });
  });

  it('is a command in a terminal', () => {
    expect(commandOf(view)).toBe('holdwright rank <study> --set cost.weight=none --set noise.must=');
  });
});
