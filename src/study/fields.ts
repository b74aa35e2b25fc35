import {
  assumed,
  count,
  date,
  type FieldDeclaration,
  longestLabel,
  nameField,
  quantity,
  required,
  text,
} from '../quantity/field.js';
import type { FeatureKind } from './feature.js';
import { featureFields } from './feature-fields.js';
import { wiringFields } from './supply-fields.js';
import { surroundingsFields } from './surroundings-fields.js';

const aboutFields: readonly FieldDeclaration[] = [
  required(
    text('question', 'about.question', {
      longest: 300,
      meaning: 'the question that the study answers',
      how: 'one sentence that somebody else understands next year',
    }),
  ),
  required(
    text('project', 'about.project', {
      longest: longestLabel,
      meaning: 'name of the project',
      how: 'what you call it',
    }),
  ),
  text('prepared_by', 'about.preparedBy', {
    longest: longestLabel,
    meaning: 'who made the study',
    how: 'your names',
  }),
  text('prepared_for', 'about.preparedFor', {
    longest: longestLabel,
    meaning: 'who decides with it',
    how: 'their names',
  }),
  date('date', 'about.date', { meaning: 'date of the study', how: 'as 2026-03-14' }),
  text('currency', 'about.currency', {
    longest: 12,
    meaning: 'currency of all sums of money',
    how: 'as EUR',
  }),
];

const decisionFields: readonly FieldDeclaration[] = [
  nameField('baseline', 'baselineId', {
    meaning: 'the candidate that exists today, by its id',
    how: 'the drive that is in the feature now',
  }),
  quantity('target.runtime', 'targetRuntimeS', 'time', {
    meaning: 'runtime on one pack that would be enough',
    how: 'from the running order: longest stretch without a swap',
    habitual: 'min',
    plausible: '1..1440 min',
    within: '0.01..100000 min',
  }),
  assumed(
    quantity('events_per_year', 'eventsPerYearCount', 'count', {
      meaning: 'events a year, for the break-even',
      how: 'count last year’s',
      within: '0..10000',
    }),
    '4',
    'a small group’s year',
  ),
  assumed(
    quantity('hour_price', 'hourPriceMoney', 'money', {
      meaning: 'what an hour of your work costs, for the break-even',
      how: 'decide it; 0 when you like doing it',
      within: '0..',
    }),
    '0',
    'work is not charged',
  ),
  assumed(
    count('draws', 'drawsCount', 1, {
      meaning: 'number of draws of the ensemble',
      how: 'more draws, finer shares, longer waiting',
      to: 65536,
    }),
    '2048',
    'shares to about one per cent',
  ),
  assumed(
    count('seed', 'seed', 0, {
      meaning: 'start of the random draws',
      how: 'any whole number',
      to: 4294967295,
    }),
    '1',
    'the same draws every time',
  ),
];

const itemsOf = (kind: FeatureKind): readonly FieldDeclaration[] => [
  ...aboutFields,
  ...featureFields(kind),
  ...surroundingsFields,
  ...wiringFields,
  ...decisionFields,
];

const items: Record<FeatureKind, readonly FieldDeclaration[]> = {
  hinge: itemsOf('hinge'),
  slide: itemsOf('slide'),
};

/** Every item of study.csv for a feature of this kind, in template order. */
export function studyFields(kind: FeatureKind): readonly FieldDeclaration[] {
  return items[kind];
}

/** Columns of study.csv itself. */
export const studyColumns: readonly FieldDeclaration[] = [
  required(text('item', 'item', { meaning: 'name of the item', how: 'from the list of items' })),
  text('value', 'value', { meaning: 'its value', how: 'number, unit and spread, or a word' }),
  text('unit', 'unit', { meaning: 'unit of a bare value', how: 'a unit in the value goes first' }),
  text('note', 'note', { meaning: 'how it was found', how: 'free text' }),
];
