import type { Study } from '../../study/study.js';
import type { Caution } from '../assessment.js';
import { general } from './caution.js';

/** Said last and always: what this calculation is not. */
export const approvalLine =
  'Local codes, the organiser’s rules and licensed practice come first. This is a calculation, not an approval.';

/** Cautions that stand whatever the numbers say, for what the study contains. */
export function standingCautions(study: Study): Caution[] {
  const cautions = [
    ...(study.pack.chemistry.id === 'nimh' ? [] : [lithium(study)]),
    pinch(study),
    falling,
    ...(study.carrier.worn ? [worn] : []),
    contact,
    unexpectedStart(study),
    comesFirst,
  ];
  return cautions.map(([code, text, action]) => general(code, 'note', { figure: '', text, action }));
}

type Standing = [code: string, text: string, action: string];

const lithium = ({ carrier }: Study): Standing => [
  'lithium',
  'Lithium packs burn when they are crushed, pierced, shorted, overcharged or charged cold.',
  `Charge them attended on a surface that cannot burn, carry them in a hard case${carrier.worn ? ' away from the spine' : ''}, and retire swollen ones.`,
];
const pinch = ({ feature }: Study): Standing => [
  'pinch',
  feature.kind === 'hinge'
    ? 'Hinges, linkages and gear trains pinch and crush, most of all near the hinge.'
    : 'Rails, cords and gear trains pinch and crush, most of all at the ends of the travel.',
  'Cover the gaps, and agree on a word that stops everybody.',
];
const falling: Standing = [
  'falling-feature',
  'Any feature can fall: a wire breaks, a tooth strips, a screw works loose.',
  'Fit a stop or a tether that carries the whole feature, and keep heads out from under it.',
];
const worn: Standing = [
  'worn-load',
  'A load on the body tires, unbalances and hides the ground; it must come off fast.',
  'Fit a quick release, rehearse getting out, and walk with somebody who sees the feet.',
];
const contact: Standing = [
  'public-contact',
  'Spectators reach out, children most of all, and they do not know which part moves next.',
  'Keep one arm length of distance and a helper beside the feature while it is powered.',
];
const unexpectedStart = ({ carrier }: Study): Standing => [
  'unexpected-start',
  'Drives move at power-on, on a lost signal and when a controller resets.',
  `Put a switch where ${carrier.worn ? 'the wearer' : 'whoever runs it'} reaches it without looking, and take the pack out before you work on it.`,
];
const comesFirst: Standing = [
  'codes-first',
  approvalLine,
  'Show this report to whoever is responsible on the day.',
];
