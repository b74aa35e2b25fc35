import { columnsOf } from './columns.js';
import { commonDefaults, screwColumns, strutColumns } from './common-columns.js';

/** Columns of a worm gearmotor. */
export const wormGearmotorColumns = columnsOf('rotary', {
  required: ['rated_voltage', 'no_load_speed'],
  either: ['stall_torque', 'rated_torque', 'rated_speed', 'rated_current'],
  assumed: {
    ...commonDefaults,
    idle_current: [null, 'nothing when switched, a little with a driver board'],
    control: ['switched', 'a bare gearmotor has two leads'],
    powered_at_hold: ['no', 'a worm that locks needs no power to hold'],
    powered_at_rest: ['no', 'switched off between moves'],
    pulse_frequency: ['20 kHz', 'driver boards switch above hearing; from experience, no published source'],
    electrical_time_constant: ['0.5 ms', 'iron-cored motors; from experience, no published source'],
    pressure_angle: [null, '20°, the usual gearing, when the lead angle is known'],
    friction_running: [null, 'usual for the type, when the lead angle is known'],
    friction_static: [null, 'usual for the type, when the lead angle is known'],
    coupling: [null, 'direct on a hinge, a spool on a slide'],
  },
  notApplicable: [...screwColumns, ...strutColumns],
  usual: {
    stall_torque: '0.2..60 N·m',
    no_load_speed: '0.05..15 rad/s',
    no_load_current: '10..2000 mA',
    mass: '40..3000 g',
  },
  choices: { coupling: ['direct', 'geared', 'spool'] },
});
