import { columnsOf } from './columns.js';
import {
  commonDefaults,
  frictionColumns,
  screwColumns,
  strutColumns,
  wormColumns,
} from './common-columns.js';

/** Columns of a position-hold servo. */
export const positionServoColumns = columnsOf('rotary', {
  required: ['rated_voltage', 'no_load_speed', 'stall_torque'],
  assumed: {
    ...commonDefaults,
    idle_current: ['4..10..30 mA', 'servo electronics; from experience, no published source'],
    control: ['position', 'a servo always drives to a position'],
    position_feedback: ['yes', 'a servo always has it'],
    powered_at_hold: ['yes', 'a servo holds only under power'],
    powered_at_rest: ['yes', 'receivers and controllers rarely switch a servo off'],
    pulse_frequency: ['2 kHz', 'digital servos spread widely about it; an analogue one has 50 Hz'],
    electrical_time_constant: [
      '0.15 ms',
      'small ironless and iron motors; from experience, no published source',
    ],
    coupling: [null, 'direct on a hinge, a spool on a slide'],
  },
  notApplicable: [...wormColumns, ...frictionColumns, ...screwColumns, ...strutColumns],
  usual: {
    stall_torque: '0.05..15 N·m',
    no_load_speed: '1..30 rad/s',
    no_load_current: '20..1500 mA',
    mass: '5..600 g',
  },
  choices: { control: ['position'], position_feedback: ['yes'], coupling: ['direct', 'geared', 'spool'] },
});
