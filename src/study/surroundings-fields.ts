import { assumed, choice, type FieldDeclaration, quantity, yesNo } from '../quantity/field.js';

const box = (which: string): FieldDeclaration =>
  quantity(`space.${which}`, `space.${which}M`, 'length', {
    meaning: `${which} of the free box for one drive; blank = no limit`,
    how: 'a ruler in the cavity, cables and tools allowed for',
    plausible: '10..2000 mm',
    within: '0.1..100000 mm',
  });

/** Items of study.csv about who carries the feature, the air and the space round the drive. */
export const surroundingsFields: readonly FieldDeclaration[] = [
  assumed(
    yesNo('carrier.worn', 'carrier.worn', {
      meaning: 'whether a person wears or carries the feature',
      how: 'decide it',
    }),
    'no',
    'on a stand',
  ),
  assumed(
    choice('carrier.activity', 'carrier.activity', ['stand', 'walk', 'brisk', 'dance', 'jump'], {
      meaning: 'what the carrier does, which sets the bounce of peak loads',
      how: 'decide it by the roughest part of the show',
    }),
    null,
    'walk when worn, else stand',
  ),
  assumed(
    quantity('carrier.lean', 'carrier.leanRad', 'angle', {
      meaning: 'how far the carrier leans so that the feature rises',
      how: 'a photograph from the side, or a telephone’s inclinometer on the harness',
      within: '-90..90 deg',
    }),
    '0 deg',
    'upright',
  ),
  quantity('carrier.body_mass', 'carrier.bodyMassKg', 'mass', {
    meaning: 'mass of the person who carries it',
    how: 'a bathroom scale',
    plausible: '15..150 kg',
    within: '1..500 kg',
  }),
  assumed(
    quantity('air.gust', 'air.gustMPerS', 'speed', {
      meaning: 'strongest gust that must not overpower the drive',
      how: 'a weather report for the place and season; 6 m/s moves small branches',
      shownIn: 'm/s',
      plausible: '0..25 m/s',
      within: '0..100 m/s',
    }),
    null,
    '6 m/s when worn and with a panel area, else none',
  ),
  assumed(
    quantity('air.temperature', 'air.temperatureK', 'temperature', {
      meaning: 'temperature of the air round the drive',
      how: 'a probe thermometer beside the drive after half an hour of show',
      plausible: '-20..60 °C',
      within: '173.15..473.15 K',
    }),
    null,
    '35 °C when worn and buried, else 25 °C',
  ),
  assumed(
    yesNo('air.buried', 'air.buried', {
      meaning: 'whether foam or fabric covers the drive',
      how: 'look at it',
    }),
    'no',
    'air reaches the drive',
  ),
  box('length'),
  box('width'),
  box('height'),
];
