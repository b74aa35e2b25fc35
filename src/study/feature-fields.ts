import { assumed, choice, count, type FieldDeclaration, quantity, required } from '../quantity/field.js';
import type { FeatureKind } from './feature.js';

/** Dimensions that depend on how the feature moves. */
export function positionDimension(kind: FeatureKind): 'angle' | 'length' {
  return kind === 'hinge' ? 'angle' : 'length';
}

/** Unit of a bare position: degrees on a hinge, millimetres on a slide. */
export function positionUnit(kind: FeatureKind): 'deg' | 'mm' {
  return kind === 'hinge' ? 'deg' : 'mm';
}

/** Items of study.csv about the moving feature. */
export function featureFields(kind: FeatureKind): FieldDeclaration[] {
  return [...bodyFields(kind), ...rangeFields(kind), ...springFields(kind)];
}

function bodyFields(kind: FeatureKind): FieldDeclaration[] {
  const hinge = kind === 'hinge';
  const onHinge = [
    required(
      quantity('feature.balance_distance', 'feature.balanceDistanceM', 'length', {
        meaning: 'distance from the hinge to the point where the feature balances',
        how: 'lay the feature across a pencil and measure from hinge to pencil with a ruler, five minutes',
        plausible: '5..2000 mm',
        within: '0..100 m',
        spread: 'feature.balance_distance',
      }),
    ),
    required(
      quantity('feature.tip_distance', 'feature.tipDistanceM', 'length', {
        meaning: 'distance from the hinge to the tip',
        how: 'a tape measure from axis to tip, one minute',
        plausible: '10..4000 mm',
        within: '1..100000 mm',
        spread: 'feature.tip_distance',
      }),
    ),
    quantity('feature.tip_scale', 'feature.tipScaleKg', 'mass', {
      meaning: 'reading of a scale under the tip, feature level; replaces mass × balance distance',
      how: 'a luggage scale under the tip, drive taken off, feature level, two minutes',
      plausible: '5..10000 g',
      within: '0..1000 kg',
      spread: 'feature.tip_scale',
    }),
    quantity('feature.inertia', 'feature.inertiaKgM2', 'inertia', {
      meaning: 'moment of inertia about the hinge',
      how: 'hang it by the hinge and time ten swings with a stopwatch: I = m·g·r·(T/2π)²',
      within: '0.0000000001..10000 kg·m²',
      spread: 'feature.inertia',
    }),
    assumed(
      choice('feature.shape', 'feature.shape', ['rod', 'panel', 'point'], {
        meaning: 'body that the feature resembles, when its inertia is not known',
        how: 'look at it: slim and even, flat and hinged on an edge, or all mass at one point',
      }),
      null,
      'without a shape: 1.33 × mass × balance distance², from experience, no published source',
    ),
  ];
  return [
    assumed(
      choice('feature.kind', 'feature.kind', ['hinge', 'slide'], {
        meaning: 'how the feature moves: about a hinge, or along a rail',
        how: 'look at it',
      }),
      'hinge',
      'most features swing',
    ),
    assumed(
      count('feature.count', 'feature.featureCount', 1, {
        meaning: 'equal features, each with its own drive or drives',
        how: 'count them',
        to: 100,
      }),
      '1',
      'one feature',
    ),
    required(
      quantity('feature.mass', 'feature.massKg', 'mass', {
        meaning: 'mass of everything that moves with the feature',
        how: 'a kitchen scale with the feature taken off, lamps and skin on, two minutes',
        plausible: '5..20000 g',
        within: '0.001..1000000 g',
        spread: 'feature.mass',
      }),
    ),
    ...(hinge ? onHinge : []),
    assumed(
      quantity('feature.panel_area', 'feature.panelAreaM2', 'area', {
        meaning: 'flat area that the motion sweeps through the air',
        how: 'width times length of the flat part, with a ruler',
        plausible: '0..40000 cm²',
        within: '0..100 m²',
      }),
      '0 m²',
      'no flat area said, so no drag and no gust',
    ),
  ];
}

function rangeFields(kind: FeatureKind): FieldDeclaration[] {
  const hinge = kind === 'hinge';
  const dimension = positionDimension(kind);
  const range = hinge ? '-360..360 deg' : '-100000..100000 mm';
  const stop = (end: 'lower' | 'upper'): FieldDeclaration =>
    required(
      quantity(`feature.${end}_stop`, `feature.${end}StopPosition`, dimension, {
        meaning: hinge
          ? `angle of the ${end} mechanical stop; 0 is level, up is positive`
          : `position of the ${end} mechanical stop along the rail`,
        how: hinge
          ? 'a telephone’s inclinometer on the feature at the stop, one minute'
          : 'a tape measure from the zero of the rail, one minute',
        habitual: positionUnit(kind),
        within: range,
      }),
    );
  return [
    stop('lower'),
    stop('upper'),
    hinge
      ? assumed(
          quantity('feature.axis_tilt', 'feature.axisTiltRad', 'angle', {
            meaning: 'how far the hinge axis is off level',
            how: 'a telephone’s inclinometer along the axis',
            within: '-90..90 deg',
          }),
          '0 deg',
          'the axis lies level',
        )
      : assumed(
          quantity('feature.incline', 'feature.inclineRad', 'angle', {
            meaning: 'how far the rail rises above level',
            how: 'a telephone’s inclinometer on the rail',
            within: '-90..90 deg',
          }),
          '90 deg',
          'the rail stands upright',
        ),
    assumed(
      quantity('feature.friction', 'feature.frictionEffort', hinge ? 'torque' : 'force', {
        meaning: `friction of the ${hinge ? 'joint' : 'rail'} while it moves`,
        how: hinge
          ? 'a luggage scale at the tip, drive taken off: half of the difference between up and down, times the distance'
          : 'a luggage scale along the rail, drive taken off: half of the difference between up and down',
        within: hinge ? '0..1000 N·m' : '0..100000 N',
      }),
      hinge ? '0 N·m' : '0 N',
      'no friction said',
    ),
    quantity('feature.latch', 'feature.latchPosition', dimension, {
      meaning: 'position at which a latch bears the load; blank when there is none',
      how: 'a telephone’s inclinometer, or a tape measure, with the latch closed',
      within: range,
    }),
  ];
}

function springFields(kind: FeatureKind): FieldDeclaration[] {
  const hinge = kind === 'hinge';
  const length = (name: string, property: string, meaning: string): FieldDeclaration =>
    quantity(name, property, 'length', {
      meaning,
      how: 'a ruler from axis to axis',
      plausible: '0..1000 mm',
      within: '0..100 m',
    });
  const linear = [
    quantity(
      'spring.stiffness',
      'feature.spring.stiffness',
      hinge ? 'rotary-stiffness' : 'linear-stiffness',
      {
        meaning: 'rate of an assist spring that is there already',
        how: 'pull with a luggage scale at two positions: difference in effort over difference in position',
        within: hinge ? '0..100000 N·m/rad' : '0..100000000 N/m',
      },
    ),
    quantity('spring.free_angle', 'feature.spring.freePosition', positionDimension(kind), {
      meaning: 'position at which that spring pushes nothing',
      how: 'move the feature by hand, drive and load taken off, until the spring goes slack',
    }),
    quantity('spring.constant', 'feature.spring.constantEffort', hinge ? 'torque' : 'force', {
      meaning: 'effort upwards of a constant-force spring or counterweight',
      how: 'a luggage scale, drive taken off',
    }),
  ];
  if (!hinge) return linear;
  return [
    ...linear,
    quantity('spring.rate', 'feature.spring.rateNPerM', 'linear-stiffness', {
      meaning: 'rate of a coil spring from an anchor straight above the hinge to a point on the feature',
      how: 'hang a known mass on it and measure how much longer it gets',
      within: '0..100000000 N/m',
    }),
    length('spring.frame_arm', 'feature.spring.frameArmM', 'height of that spring’s anchor above the hinge'),
    length(
      'spring.feature_arm',
      'feature.spring.featureArmM',
      'distance from the hinge to its point on the feature',
    ),
    length('spring.free_length', 'feature.spring.freeLengthM', 'length of that spring when it pulls nothing'),
  ];
}
