import { choice, type FieldDeclaration, longestLabel, quantity, text } from '../quantity/field.js';
import type { Motion } from './sheet.js';

/** Supply, money, hours, noise and where the figures come from. */
export function costColumns(motion: Motion): FieldDeclaration[] {
  return [
    choice('supply', 'supply', ['pack', 'regulated'], {
      meaning: 'whether the drive hangs on the pack or behind a regulator',
      how: 'follow the red wire',
    }),
    quantity('regulator_voltage', 'regulatorVoltageV', 'voltage', {
      meaning: 'voltage the regulator gives',
      how: 'a multimeter at its output',
      plausible: '3..24 V',
      within: '0.1..400 V',
    }),
    quantity('regulator_efficiency', 'regulatorEfficiency', 'ratio', {
      meaning: 'share of the pack’s power that the regulator passes on',
      how: 'voltage × current behind it over voltage × current before it',
      shownIn: '%',
      plausible: '50..99 %',
      within: '0.01..1',
    }),
    quantity('regulator_limit', 'regulatorLimitA', 'current', {
      meaning: 'largest current the regulator gives',
      how: 'from its data sheet: the continuous figure, not the peak',
      plausible: '0.2..40 A',
      within: '0.001..1000 A',
    }),
    quantity('price', 'priceMoney', 'money', {
      meaning: 'price of one drive',
      how: 'from the listing, with shipping',
      within: '0..',
    }),
    quantity('extra_cost', 'extraCostMoney', 'money', {
      meaning: 'what else the change costs: mounts, drivers, wire; for the whole study',
      how: 'add up the shopping list',
      within: '0..',
    }),
    quantity('rework_hours', 'reworkTimeS', 'time', {
      meaning: 'hours of work until the change is done',
      how: 'your own guess, taken times one and a half',
      habitual: 'h',
      plausible: '0..200 h',
      within: '0..100000 h',
    }),
    quantity('swap_minutes', 'swapTimeS', 'time', {
      meaning: 'minutes to exchange a broken drive at the event',
      how: 'a stopwatch, with the tools you carry',
      habitual: 'min',
      plausible: '0..120 min',
      within: '0..100000 min',
    }),
    quantity('noise', 'noiseDb', 'sound-level', {
      meaning: 'sound level while moving, read at noise_distance; compared at 1 m',
      how: 'a telephone’s sound level app, quiet room, feature attached',
      plausible: '20..90 dB',
      within: '0..200 dB',
    }),
    quantity('noise_distance', 'noiseDistanceM', 'length', {
      meaning: 'distance from the drive at which the sound level was read',
      how: 'a tape measure from drive to microphone',
      plausible: '0.05..5 m',
      within: '0.001..1000 m',
    }),
    quantity('backlash', 'backlash', motion === 'rotary' ? 'angle' : 'length', {
      meaning: 'free play at the output',
      how:
        motion === 'rotary' ? 'a ruler at the tip: play over distance is the angle' : 'a calliper at the rod',
      within: motion === 'rotary' ? '0..90 deg' : '0..1000 mm',
    }),
    quantity('life_cycles', 'lifeCyclesCount', 'count', {
      meaning: 'number of cycles the maker promises',
      how: 'from the data sheet',
      within: '0..',
    }),
    text('ingress_rating', 'ingressRating', {
      longest: longestLabel,
      meaning: 'protection against dust and water, as an IP code',
      how: 'from the data sheet: IP54',
    }),
    choice('on_signal_loss', 'onSignalLoss', ['holds', 'frees', 'centres'], {
      meaning: 'what it does when the command fails but power stays',
      how: 'switch the transmitter off and watch, with the feature supported',
    }),
    text('source', 'source', {
      meaning: 'where the figures come from',
      how: 'name of the listing, sheet or bench note',
    }),
    text('source_date', 'sourceDate', {
      longest: longestLabel,
      meaning: 'when they were read',
      how: 'the date of the visit',
    }),
    text('note', 'note', { meaning: 'anything worth keeping', how: 'free text' }),
  ];
}
