import {
  assumed,
  choice,
  count,
  type FieldDeclaration,
  longestLabel,
  nameField,
  quantity,
  required,
  text,
} from '../quantity/field.js';

/** Items of study.csv about wire, fuse, protection and the pack in use. */
export const wiringFields: readonly FieldDeclaration[] = [
  assumed(
    quantity('wire.length', 'wiring.lengthM', 'length', {
      meaning: 'length of wire from pack to drives, one way',
      how: 'a tape measure along the cable',
      plausible: '10..10000 mm',
      within: '0..1000 m',
    }),
    '0.5 m',
    'pack and drive on one body',
  ),
  assumed(
    quantity('wire.gauge', 'wiring.areaM2', 'wire-size', {
      meaning: 'size of that wire',
      how: 'printed on the insulation; or a calliper over the bare strands',
      within: '0.001..1000 mm²',
    }),
    '18 AWG',
    'common on packs of this size',
  ),
  assumed(
    quantity('wire.switch_resistance', 'wiring.switchResistanceOhm', 'resistance', {
      meaning: 'resistance of the main switch',
      how: 'a multimeter in millivolts across it at a known current',
      plausible: '0..500 mΩ',
      within: '0..100 Ω',
    }),
    '10 mΩ',
    'a clean toggle switch; from experience, no published source',
  ),
  assumed(
    quantity('wire.connector_resistance', 'wiring.connectorResistanceOhm', 'resistance', {
      meaning: 'resistance of all connectors together',
      how: 'a multimeter in millivolts across them at a known current',
      plausible: '0..200 mΩ',
      within: '0..100 Ω',
    }),
    '2 mΩ',
    'two bullet connectors; from experience, no published source',
  ),
  quantity('fuse.rating', 'wiring.fuseRatingA', 'current', {
    meaning: 'rating of the fuse; blank = none fitted',
    how: 'printed on it',
    plausible: '0.5..60 A',
    within: '0.001..10000 A',
  }),
  quantity('protection.trip', 'wiring.protectionTripA', 'current', {
    meaning: 'current at which the protection board trips; blank = none fitted',
    how: 'from the data sheet of the board or pack',
    plausible: '0.5..200 A',
    within: '0.001..10000 A',
  }),
  quantity('protection.delay', 'wiring.protectionDelayS', 'time', {
    meaning: 'how long the current must last before it trips',
    how: 'from the data sheet of the board',
    plausible: '0.1..5000 ms',
    within: '0..1000 s',
  }),
  quantity('controller.minimum_voltage', 'wiring.controllerMinimumV', 'voltage', {
    meaning: 'voltage below which the controller resets',
    how: 'lower a bench supply until it does; or from its data sheet',
    plausible: '2..24 V',
    within: '0..400 V',
  }),
  required(
    nameField('pack.choice', 'pack.id', {
      meaning: 'the pack in use, by its id in packs.csv',
      how: 'decide it',
    }),
  ),
  assumed(
    count('pack.carried', 'packsCarriedCount', 1, {
      meaning: 'packs that the carrier has along, the one in use included',
      how: 'count them',
      to: 1000,
    }),
    '1',
    'the one in use',
  ),
  assumed(
    quantity('pack.temperature', 'packTemperatureK', 'temperature', {
      meaning: 'temperature of the pack during the show',
      how: 'a probe thermometer against the pack after half an hour',
      plausible: '-20..60 °C',
      within: '233.15..373.15 K',
    }),
    '25 °C',
    'air outside',
  ),
];

const label = assumed(
  text('label', 'label', { longest: longestLabel, meaning: 'name as printed', how: 'make it up' }),
  null,
  'the id',
);
const note = text('note', 'note', { meaning: 'anything worth keeping', how: 'free text' });
const id = required(
  nameField('id', 'id', {
    meaning: 'short name that study.csv and flags use',
    how: 'make it up: letters, digits, - and _',
  }),
);

/** Chemistries the tool has discharge tables for, as written in packs.csv. */
const chemistryNames = ['lipo', 'nmc-pouch', 'li-ion', 'li-ion-power', 'lifepo4', 'nimh'] as const;

/** Columns of packs.csv. */
export const packFields: readonly FieldDeclaration[] = [
  id,
  label,
  required(
    choice('chemistry', 'chemistry', chemistryNames, {
      meaning: 'kind of cells',
      how: 'printed on the pack; flat soft packs are lipo, round metal cells li-ion',
    }),
  ),
  required(
    count('cells', 'seriesCount', 1, {
      meaning: 'cells in series',
      how: 'the figure before the S: 2S is two; or pack voltage over cell voltage',
      to: 40,
    }),
  ),
  assumed(
    count('parallel', 'parallelCount', 1, {
      meaning: 'cells side by side',
      how: 'the figure before the P: 2S3P is three',
      to: 100,
    }),
    '1',
    'one string of cells',
  ),
  required(
    quantity('capacity', 'capacityC', 'charge', {
      meaning: 'label capacity of the whole pack',
      how: 'printed on it; a charger that counts mAh from empty gives the true figure in one evening',
      plausible: '50..100000 mAh',
      within: '1..100000000 C',
      spread: 'pack_capacity',
    }),
  ),
  quantity('cell_resistance', 'cellResistanceOhm', 'resistance', {
    meaning: 'sustained resistance of one cell',
    how: 'voltage drop over current after a minute of load, over the number of cells; an instant meter reading × 1.6',
    plausible: '0.5..300 mΩ',
    within: '0.000001..100 Ω',
  }),
  quantity('discharge_rating', 'dischargeRatingPerH', 'charge-rate', {
    meaning: 'discharge rating on the label',
    how: 'printed on it: 25C',
    habitual: 'C',
    plausible: '0.5..150 C',
    within: '0.01..1000 C',
  }),
  assumed(
    quantity('reserve', 'reserveFraction', 'ratio', {
      meaning: 'share of the capacity that is left in the pack',
      how: 'decide it; a fifth spares the cells',
      shownIn: '%',
      within: '0..0.95',
    }),
    '20 %',
    'spares the cells and leaves a way home',
  ),
  assumed(
    quantity('cut_off', 'cutOffVoltageV', 'voltage', {
      meaning: 'voltage per cell under load at which the run ends',
      how: 'setting of the low-voltage alarm or driver, over the number of cells',
      plausible: '0.8..3.8 V',
      within: '0.1..5 V',
    }),
    null,
    'usual for the chemistry',
  ),
  assumed(
    quantity('warning', 'warningVoltageV', 'voltage', {
      meaning: 'voltage per cell under load at which somebody is warned',
      how: 'setting of the low-voltage alarm, over the number of cells',
      plausible: '0.8..4 V',
      within: '0.1..5 V',
    }),
    null,
    '0.2 V above the cut-off',
  ),
  quantity('mass', 'massKg', 'mass', {
    meaning: 'mass of the pack with its leads',
    how: 'a kitchen scale, one minute',
    plausible: '5..10000 g',
    within: '0.001..1000000 g',
    spread: 'mass',
  }),
  assumed(
    quantity('aged_to', 'agedToFraction', 'ratio', {
      meaning: 'share of the label capacity that age has left',
      how: 'a charger that counts mAh: charge from empty over the label',
      shownIn: '%',
      plausible: '40..105 %',
      within: '0.01..1.2',
    }),
    '100 %',
    'as new',
  ),
  quantity('price', 'priceMoney', 'money', {
    meaning: 'price of one pack',
    how: 'from the listing',
    within: '0..',
  }),
  assumed(
    quantity('charge_rate', 'chargeRatePerH', 'charge-rate', {
      meaning: 'rate at which it is charged',
      how: 'charger current over capacity; 1C charges in about an hour and a quarter',
      habitual: 'C',
      plausible: '0.05..10 C',
      within: '0.001..100 C',
    }),
    '1 C',
    'safe for nearly every pack',
  ),
  assumed(
    choice('figures_from', 'figuresFrom', ['listing', 'data-sheet', 'measured'], {
      meaning: 'where capacity and mass come from; sets their default spreads',
      how: 'listing: a shop page or the label; data-sheet: the maker’s curve; measured: by you',
    }),
    'listing',
    'the most cautious reading of a figure',
  ),
  note,
];

/** Columns of loads.csv. */
export const loadFields: readonly FieldDeclaration[] = [
  id,
  label,
  required(
    quantity('power', 'powerW', 'power', {
      meaning: 'power the load itself uses at full level, all features together',
      how: 'a multimeter in series behind the converter: volts times amps',
      plausible: '0..300 W',
      within: '0..100000 W',
    }),
  ),
  quantity('voltage', 'voltageV', 'voltage', {
    meaning: 'voltage of the load',
    how: 'printed on it, or a multimeter',
    plausible: '1..60 V',
    within: '0.1..400 V',
  }),
  quantity('converter_efficiency', 'converterEfficiency', 'ratio', {
    meaning:
      'share of the pack’s power that a step-up or step-down converter passes on; blank = taken as a linear regulator, or nothing between: the pack gives power over voltage as current',
    how: 'volts times amps behind it over volts times amps before it',
    shownIn: '%',
    plausible: '50..99 %',
    within: '0.01..1',
  }),
  assumed(
    quantity('idle_power', 'idlePowerW', 'power', {
      meaning: 'power that it draws all the time, switched on or not',
      how: 'a multimeter in series with the load dark and still',
      plausible: '0..20 W',
      within: '0..100000 W',
    }),
    '0 W',
    'nothing said',
  ),
  assumed(
    choice('drawn_when', 'drawnWhen', ['always', 'lights', 'moving'], {
      meaning: 'when it draws its power: always, with the cue’s light level, or while the feature moves',
      how: 'decide it by what it is',
    }),
    'always',
    'the most cautious reading',
  ),
  note,
];
