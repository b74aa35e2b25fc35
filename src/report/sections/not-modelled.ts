import type { Filling } from '../template/fill-template.js';

/** What the calculation leaves out; all wording, no figures. */
export function notModelledSection(): Filling[] {
  return [{ values: {}, charts: {} }];
}
