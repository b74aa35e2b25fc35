import { columnsOf } from './columns.js';
import { commonDefaults, wormColumns } from './common-columns.js';

/** Columns of a screw actuator: a motor, a thread and a rod. */
export const screwActuatorColumns = columnsOf('linear', {
  required: ['rated_voltage', 'no_load_speed', 'stroke'],
  either: ['stall_force', 'rated_force', 'rated_speed', 'rated_current'],
  assumed: {
    ...commonDefaults,
    idle_current: [null, 'nothing when switched, a little with a driver board'],
    control: ['switched', 'a bare actuator has two leads'],
    powered_at_hold: ['no', 'a thread that locks needs no power to hold'],
    powered_at_rest: ['no', 'switched off between moves'],
    pulse_frequency: ['20 kHz', 'driver boards switch above hearing; from experience, no published source'],
    electrical_time_constant: ['0.5 ms', 'iron-cored motors; from experience, no published source'],
    friction_running: [null, 'usual for the type, when the thread is known'],
    friction_static: [null, 'usual for the type, when the thread is known'],
    flank_angle: [null, '15°, a trapezoidal thread, when the thread is known'],
    collar_friction: [null, 'as in the thread, when the collar is known'],
    on_share: ['20 %', 'what listings of small actuators state'],
    on_period: ['20 min', 'what data sheets of small actuators state'],
    coupling: [null, 'a strut beside a hinge, direct on a slide'],
    strut_frame_arm: [null, 'proposed so that stroke and closed length fit with the least force'],
    strut_feature_arm: [null, 'proposed so that stroke and closed length fit with the least force'],
    strut_level_angle: [null, 'proposed so that stroke and closed length fit with the least force'],
    strut_side: ['push', 'below the feature'],
    closed_length: [
      null,
      'the length of the envelope; where that is blank too, whether a strut fits is not judged',
    ],
  },
  notApplicable: [...wormColumns],
  usual: {
    stall_force: '10..3000 N',
    no_load_speed: '1..200 mm/s',
    no_load_current: '20..3000 mA',
    mass: '30..3000 g',
  },
  choices: { coupling: ['direct', 'geared', 'strut'] },
});
