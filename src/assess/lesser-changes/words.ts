import { formatQuantity } from '../../quantity/format.js';
import type { Cue } from '../../study/show.js';
import { effortOf, listed, positionOf } from '../figures.js';

/** Figures of the feature as the lesser changes write them: N·m and degrees on a hinge, N and mm on a rail. */

/** N·m on a hinge, N on a rail. */
export const effortText = (effort: number, isHinge: boolean): string =>
  effortOf(effort, isHinge ? 'rotary' : 'linear');
/** Position of the feature: degrees on a hinge, mm on a rail. */
export const placeText = (position: number, isHinge: boolean): string => positionOf(position, isHinge);
export const lengthText = (lengthM: number): string => formatQuantity(lengthM, 'length');
/** Rate of a spring that pulls or pushes in a line. */
export const rateText = (rateNPerM: number): string => formatQuantity(rateNPerM, 'linear-stiffness');

/** A cue by its name, or by its line where it has none. */
export const cueName = ({ name, line }: Pick<Cue, 'name' | 'line'>): string =>
  name === '' ? `the cue in line ${line}` : `“${name}”`;

/** Each cue once, in order: `“stand tall” and “salute”`. */
export const cueNames = (cues: readonly Cue[]): string => listed([...new Set(cues.map(cueName))]);
