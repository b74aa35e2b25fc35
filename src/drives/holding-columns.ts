import { choice, type FieldDeclaration, quantity, yesNo } from '../quantity/field.js';
import { loadedEffort } from './rating-columns.js';
import type { Motion } from './sheet.js';

/** What the drive draws and does while it stands still. */
export function holdingColumns(motion: Motion): FieldDeclaration[] {
  const rotary = motion === 'rotary';
  const effort = rotary ? 'torque' : 'force';
  const anyEffort = rotary ? '0..10000 N·m' : '0..1000000 N';
  return [
    quantity('idle_current', 'idleCurrentA', 'current', {
      meaning: 'current while powered, still and unloaded, its own electronics included',
      how: 'a multimeter in series with the drive at rest on a stop, one minute',
      plausible: '0..500 mA',
      within: '0..50 A',
      spread: 'current',
    }),
    quantity('hold_current', 'holdCurrentA', 'current', {
      meaning: 'current in the lead of one drive while it holds a known load',
      how: 'a multimeter in series with the drive while the feature is held, mean of one minute',
      plausible: '1..15000 mA',
      within: '0..1000 A',
      spread: 'current',
    }),
    quantity('hold_effort', 'holdEffort', effort, {
      meaning: `${effort} that was held while hold_current was read`,
      how: rotary
        ? 'mass on the arm times 9.81 times its distance from the axis, arm level'
        : 'mass on the rod times 9.81',
      within: loadedEffort(motion),
    }),
    choice('control', 'control', ['position', 'switched'], {
      meaning: 'how it is driven: towards a position, or switched on and off',
      how: 'position: a servo or a driver board with feedback; switched: relay, toggle switch or plain polarity',
    }),
    yesNo('position_feedback', 'positionFeedback', {
      meaning: 'whether it can stop between its end switches',
      how: 'yes with a potentiometer, encoder or Hall sensor that somebody reads; no with bare leads; a driver board that goes to a position (control = position) answers it too',
    }),
    yesNo('powered_at_hold', 'poweredAtHold', {
      meaning: 'whether it stays powered while it holds; “no” counts only if it locks',
      how: 'decide it with the wiring: does anything switch it off between cues?',
    }),
    yesNo('powered_at_rest', 'poweredAtRest', {
      meaning: 'whether it stays powered while a stop or latch bears the load',
      how: 'decide it with the wiring: does anything switch it off at rest?',
    }),
    quantity('pulse_frequency', 'pulseFrequencyHz', 'frequency', {
      meaning: 'how often a second the driver switches the motor voltage',
      how: 'an oscilloscope on a motor lead; analogue servos 50 Hz, digital ones 300 Hz and more',
      plausible: '20..100000 Hz',
      within: '1..10000000 Hz',
    }),
    quantity('electrical_time_constant', 'electricalTimeConstantS', 'time', {
      meaning: 'inductance of the winding over its resistance',
      how: 'an LCR meter: inductance at 1 kHz divided by the resistance between the leads',
      shownIn: 'ms',
      plausible: '0.01..5 ms',
      within: '0.000001..10 s',
    }),
    quantity('mechanical_time_constant', 'mechanicalTimeConstantS', 'time', {
      meaning: 'time in which the unloaded motor reaches 63 % of its speed',
      how: 'from the data sheet of the motor inside; an oscilloscope on the current at switch-on shows it',
      shownIn: 'ms',
      plausible: '1..200 ms',
      within: '0.00001..10 s',
    }),
    yesNo('regenerates', 'regenerates', {
      meaning: 'whether energy from braking flows back into the pack',
      how: 'only some driver boards do; from their data sheet',
    }),
    yesNo('shorts_when_off', 'shortsWhenOff', {
      meaning: 'whether the motor leads are shorted when power is gone',
      how: 'unplug it and turn it by hand with a meter on the leads; a relay can be wired to do it',
    }),
    quantity('backdrives_at', 'backdrivesAtEffort', effort, {
      meaning: `${effort} at which it gives way without power; decides over every calculation`,
      how: rotary
        ? 'a luggage scale on the arm, drive unplugged, pulled slowly until it turns, five minutes'
        : 'a luggage scale on the rod, drive unplugged, pulled slowly until it slides, five minutes',
      within: anyEffort,
    }),
    quantity('breaks_at', 'breaksAtEffort', effort, {
      meaning: `${effort} that breaks it or its mount`,
      how: 'from the data sheet (largest static load); never by trial on the only drive you have',
      within: anyEffort,
    }),
    quantity('shake_factor', 'shakeRatio', 'ratio', {
      meaning: 'share of the static friction that is left while the carrier shakes it',
      how: 'load the unpowered drive, tap its mount, and compare the load at which it creeps with the still one',
      within: '0..1',
    }),
    quantity('on_share', 'onShareFraction', 'ratio', {
      meaning: 'largest share of time it may run, of each on_period',
      how: 'from the listing: “duty cycle 20 %”',
      shownIn: '%',
      plausible: '5..100 %',
      within: '0..1',
    }),
    quantity('on_period', 'onPeriodS', 'time', {
      meaning: 'window over which the on-share is taken',
      how: 'from the data sheet: “20 % of 20 minutes”',
      shownIn: 'min',
      plausible: '1..60 min',
      within: '0.1..100000 s',
    }),
  ];
}
