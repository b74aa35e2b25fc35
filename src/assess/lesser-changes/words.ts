import { formatQuantity } from '../../quantity/format.js';
import { effortOf, positionOf } from '../figures.js';

/** Figures of the feature as the lesser changes write them: N·m and degrees on a hinge, N and mm on a rail. */

export const effortText = (effort: number, isHinge: boolean): string =>
  effortOf(effort, isHinge ? 'rotary' : 'linear');
export const placeText = (position: number, isHinge: boolean): string => positionOf(position, isHinge);
export const lengthText = (lengthM: number): string => formatQuantity(lengthM, 'length');
export const rateText = (rateNPerM: number): string => formatQuantity(rateNPerM, 'linear-stiffness');

/** `A`, `A and B`, `A, B and C`. */
export function listed(parts: readonly string[]): string {
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

/** Each name once, in order: `"stand tall" and "salute"`. */
export const cueNames = (names: readonly string[]): string =>
  listed([...new Set(names)].map((name) => `“${name}”`));
