import { choice, count, type FieldDeclaration, quantity } from '../quantity/field.js';
import type { Motion } from './sheet.js';

/** Range of an effort that a figure was read at: never none. */
export const loadedEffort = (motion: Motion): string =>
  motion === 'rotary' ? '0.00001..10000 N·m' : '0.001..1000000 N';

/** Voltage, speed, effort and current as a listing states them. */
export function ratingColumns(motion: Motion): FieldDeclaration[] {
  const rotary = motion === 'rotary';
  const effort = rotary ? 'torque' : 'force';
  const speed = rotary ? 'angular-speed' : 'speed';
  return [
    count('drives_per_feature', 'drivesPerFeatureCount', 1, {
      meaning: 'how many of these drives share the load of one feature',
      how: 'decide it; two drives need one mount each and a joint that shares the load',
      to: 20,
    }),
    quantity('rated_voltage', 'ratedVoltageV', 'voltage', {
      meaning: 'voltage at which the figures of this row hold',
      how: 'from the listing, beside the speed and the stall figure',
      plausible: '2..48 V',
      within: '0.1..400 V',
    }),
    quantity('maximum_voltage', 'maximumVoltageV', 'voltage', {
      meaning: 'highest voltage the drive may see, compared with the full pack',
      how: 'from the data sheet; it is often the upper end of the voltage range in a listing',
      plausible: '3..60 V',
      within: '0.1..400 V',
    }),
    quantity('no_load_speed', 'noLoadSpeed', speed, {
      meaning: 'speed with nothing attached, at the rated voltage',
      how: rotary
        ? 'film ten free swings of a known angle with a telephone and count the frames'
        : 'time the whole stroke with a stopwatch and divide the stroke by the seconds',
      plausible: rotary ? '0.05..80 rad/s' : '0.5..300 mm/s',
      within: rotary ? '0.0001..10000 rad/s' : '0.001..100000 mm/s',
      spread: 'no_load_speed',
    }),
    quantity('no_load_current', 'noLoadCurrentA', 'current', {
      meaning: 'current while running with nothing attached',
      how: 'a clamp meter or a series ammeter on one lead while it runs free, two minutes',
      plausible: '5..2000 mA',
      within: '0..100 A',
      spread: 'current',
    }),
    quantity(rotary ? 'stall_torque' : 'stall_force', 'stallEffort', effort, {
      meaning: `largest ${effort}, at which it stands still, at the rated voltage`,
      how: rotary
        ? 'a luggage scale on an arm of known length, drive held in a vice; one second per pull, no more'
        : 'push against a bathroom scale, one second per push, no more',
      plausible: rotary ? '0.05..60 N·m' : '5..5000 N',
      within: loadedEffort(motion),
      spread: 'stall_effort',
    }),
    quantity('stall_current', 'stallCurrentA', 'current', {
      meaning: 'current at stall, at the rated voltage',
      how: 'a clamp meter that holds its peak, during a stall of one second; or voltage over winding resistance',
      plausible: '50..60000 mA',
      within: '0.001..1000 A',
      spread: 'current',
    }),
    quantity(rotary ? 'rated_torque' : 'rated_force', 'ratedEffort', effort, {
      meaning: `${effort} of the one loaded point that the listing states`,
      how: rotary
        ? 'hang a known mass on an arm of known length and let the drive lift it'
        : 'hang a known mass on the rod and let the drive lift it',
      plausible: rotary ? '0.02..30 N·m' : '2..3000 N',
      within: loadedEffort(motion),
      spread: 'stall_effort',
    }),
    quantity('rated_speed', 'ratedSpeed', speed, {
      meaning: 'speed at the loaded point',
      how: 'film the lift of a known mass and count the frames',
      plausible: rotary ? '0.02..60 rad/s' : '0.3..250 mm/s',
      within: rotary ? '0.0001..10000 rad/s' : '0.001..100000 mm/s',
      spread: 'no_load_speed',
    }),
    quantity('rated_current', 'ratedCurrentA', 'current', {
      meaning: 'current at the loaded point',
      how: 'a clamp meter on one lead during the lift of a known mass',
      plausible: '10..30000 mA',
      within: '0.001..1000 A',
      spread: 'current',
    }),
    choice('figures_from', 'figuresFrom', ['listing', 'data-sheet', 'measured'], {
      meaning: 'where the figures of this row come from; sets their default spreads',
      how: 'listing: a shop page; data-sheet: a curve or table of the maker; measured: by you, on your drive',
    }),
  ];
}
