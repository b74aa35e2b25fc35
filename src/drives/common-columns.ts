import type { TypeColumns } from './columns.js';

/** Defaults that every drive type shares, in the value grammar, with their basis. */
export const commonDefaults: TypeColumns['assumed'] = {
  drives_per_feature: ['1', 'one drive on each feature'],
  maximum_voltage: [null, 'rated voltage times a factor of the type'],
  no_load_current: [null, 'usual share of the stall current'],
  stall_current: [null, 'from stall effort, speed and the efficiency usual for the type'],
  figures_from: ['listing', 'the most cautious reading of a figure'],
  mechanical_time_constant: ['5..15..30 ms', 'small brushed motors; from experience, no published source'],
  regenerates: ['no', 'most small drivers burn what comes back'],
  shorts_when_off: ['no', 'leads are open unless somebody wired or measured it'],
  shake_factor: ['0.5', 'half of the friction is left under shaking; from experience, no published source'],
  mount_mass: ['0 g', 'nothing said, nothing added: weigh it'],
  electronics_mass: [null, 'what a change of this type usually needs; nothing on the drive of today'],
  rides_on_feature: ['no', 'mounted on the frame'],
  winding_to_case: ['3..12 K/W', 'small motors; from experience, no published source'],
  case_to_air: [null, 'from the surface of the envelope'],
  winding_heat_capacity: [null, 'from the mass'],
  case_heat_capacity: [null, 'from the mass'],
  winding_limit: ['85..100..125 °C', 'small motors; from experience, no published source'],
  case_material: ['metal', 'feels hotter than plastic, so the stricter limit is taken'],
  supply: ['pack', 'straight from the pack'],
  regulator_efficiency: ['0.75..0.85..0.92', 'step-down converters; from experience, no published source'],
  noise_distance: [
    '1 m',
    'listings often measure nearer, which would make the drive quieter at 1 m; a blank is not to gain by that',
  ],
  extra_cost: [null, 'what a change of this type usually costs; nothing on the drive of today'],
  rework_hours: [null, 'what a change of this type usually takes; nothing on the drive of today'],
};

/** Columns that only make sense where a worm or thread slides. */
export const wormColumns = ['lead_angle', 'pressure_angle'] as const;
/** Friction of worm or thread; only where its geometry is known. */
export const frictionColumns = ['friction_running', 'friction_static'] as const;
/** Geometry of a thread and its collar. */
export const screwColumns = [
  'screw_diameter',
  'screw_lead',
  'flank_angle',
  'collar_diameter',
  'collar_friction',
] as const;
/** Rod and pivots: only a drive that slides has them. */
export const strutColumns = [
  'strut_frame_arm',
  'strut_feature_arm',
  'strut_level_angle',
  'strut_side',
  'stroke',
  'closed_length',
  'side_load_limit',
] as const;
