import { choice, type FieldDeclaration, quantity } from '../quantity/field.js';

/** How drive and feature are joined, and what a rod brings along. */
export const couplingColumns: readonly FieldDeclaration[] = [
  choice('coupling', 'coupling', ['direct', 'geared', 'spool', 'strut'], {
    meaning: 'how the drive is joined to the feature',
    how: 'direct: on the axis or the rail; geared: through gears or a belt; spool: a cord on a drum; strut: a rod beside the hinge',
  }),
  quantity('coupling_ratio', 'couplingRatio', 'ratio', {
    meaning: 'turns of the drive per turn of the feature',
    how: 'count the teeth: driven over driving',
    plausible: '0.2..20',
    within: '0.001..1000',
  }),
  quantity('coupling_efficiency', 'couplingEfficiency', 'ratio', {
    meaning: 'share of the work that the coupling passes on',
    how: 'lift a known mass with and without the coupling and compare the currents',
    shownIn: '%',
    plausible: '50..100 %',
    within: '0.001..1',
  }),
  quantity('spool_radius', 'spoolRadiusM', 'length', {
    meaning: 'radius on which the cord runs',
    how: 'a calliper: half of the drum’s diameter plus half of the cord’s',
    plausible: '2..100 mm',
    within: '0.01..10000 mm',
  }),
  quantity('strut_frame_arm', 'strutFrameArmM', 'length', {
    meaning: 'distance from the hinge to the pivot on the frame',
    how: 'a ruler from axis to axis',
    plausible: '10..600 mm',
    within: '0.1..10000 mm',
  }),
  quantity('strut_feature_arm', 'strutFeatureArmM', 'length', {
    meaning: 'distance from the hinge to the pivot on the feature',
    how: 'a ruler from axis to axis',
    plausible: '10..400 mm',
    within: '0.1..10000 mm',
  }),
  quantity('strut_level_angle', 'strutLevelAngleRad', 'angle', {
    meaning: 'angle between the two arms when the feature is level',
    how: 'a protractor at the hinge, or a photograph from the side',
    within: '-360..360 deg',
  }),
  choice('strut_side', 'strutSide', ['push', 'pull'], {
    meaning: 'push: the rod gets longer as the feature rises; pull: shorter',
    how: 'look at the drawing: below the feature it pushes, above it pulls',
  }),
  quantity('stroke', 'strokeM', 'length', {
    meaning: 'travel from fully in to fully out',
    how: 'a ruler on the rod, fully in and fully out',
    plausible: '5..600 mm',
    within: '0.1..10000 mm',
  }),
  quantity('closed_length', 'closedLengthM', 'length', {
    meaning: 'distance between the two eyes with the rod fully in',
    how: 'a ruler from eye to eye; in listings “retracted length” or “installation length”',
    plausible: '30..1000 mm',
    within: '0.1..10000 mm',
  }),
  quantity('side_load_limit', 'sideLoadLimitN', 'force', {
    meaning: 'largest force across the rod',
    how: 'from the data sheet',
    within: '0..1000000 N',
  }),
];
