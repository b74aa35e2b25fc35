import type { Motion } from '../drives/sheet.js';
import { zeroCelsiusK } from '../quantity/exact.js';
import { formatNumber, formatQuantity, formatValue } from '../quantity/format.js';
import { longestRunS } from '../simulate/run-down.js';

/** Figures as the sentences of the assessment write them: the unit a person reads, three digits that count. */

/** Absolute temperature of a figure on the Celsius scale. */
export const kelvinOf = (degrees: number): number => degrees + zeroCelsiusK;

/** A number with a fixed count of digits after the point. */
export const decimal = (value: number, digits: number): string => value.toFixed(digits);

/** A pure number. */
export const plain = (value: number): string => formatNumber(value, 3);

/** mA below 1 A, else A. */
export const amperes = (currentA: number): string => formatQuantity(currentA, 'current');
export const ohms = (resistanceOhm: number): string => formatValue(resistanceOhm, 'Ω');
export const volts = (voltageV: number): string => formatValue(voltageV, 'V');
/** mW below 1 W, else W. */
export const watts = (powerW: number): string => formatQuantity(powerW, 'power');
export const newtons = (forceN: number): string => formatValue(forceN, 'N');
export const joules = (energyJ: number): string => formatValue(energyJ, 'J');
/** Energy in J, shown in Wh. */
export const wattHours = (energyJ: number): string => formatValue(energyJ, 'Wh');
/** Time in s, shown in ms. */
export const milliseconds = (timeS: number): string => formatValue(timeS, 'ms');
/** Hz below 1 kHz, else kHz. */
export const frequency = (frequencyHz: number): string => formatQuantity(frequencyHz, 'frequency');
/** Time in s, shown in whole minutes; a run as long as the longest that is followed has only not ended by then. */
export const minutes = (timeS: number): string =>
  timeS < longestRunS ? `${Math.round(timeS / 60)} min` : `over ${longestRunS / 3600} h`;
/** Time in s, shown in hours. */
export const hours = (timeS: number): string => formatValue(timeS, 'h');
/** Share of one, shown in whole percent. */
export const percent = (fraction: number): string => `${Math.round(fraction * 100)} %`;
/** Absolute temperature, shown in whole °C. */
export const celsius = (temperatureK: number): string => `${Math.round(temperatureK - zeroCelsiusK)} °C`;
/** Two digits that count, as tables give a speed too. */
export const metresPerSecond = (speedMPerS: number): string => formatValue(speedMPerS, 'm/s', 2);
/** g below 1 kg, else kg. */
export const mass = (massKg: number): string => formatQuantity(massKg, 'mass');

/** Seconds up to two minutes, minutes above. */
export const shortTime = (timeS: number): string =>
  timeS < 120 ? formatValue(timeS, 's', 2) : minutes(timeS);

/** Effort in the unit of a drive's motion. */
export const effortOf = (effort: number, motion: Motion): string =>
  formatValue(effort, motion === 'rotary' ? 'N·m' : 'N');

/** Position of the feature: degrees on a hinge, millimetres on a slide. */
export const positionOf = (position: number, isHinge: boolean): string =>
  isHinge ? formatValue(position, 'deg').replace(' deg', '°') : formatValue(position, 'mm');

/** A count with its word: `1 limit`, `3 limits`. */
export const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;

/** `2,048`. */
export function countText(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}

/** `A`, `A and B`, `A, B and C`. */
export function listed(parts: readonly string[]): string {
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}
