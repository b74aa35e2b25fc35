import type { Source } from './source.js';

/** Heat, and what people may touch or hear. */
export const heatAndSafetySources = [
  {
    id: 'incropera',
    authors: 'F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine',
    title: 'Fundamentals of Heat and Mass Transfer',
    edition: '6th ed.',
    year: 2007,
    publisher: 'Wiley',
  },
  {
    id: 'iso-13732-1',
    authors: 'International Organization for Standardization',
    title:
      'Ergonomics of the thermal environment: Methods for the assessment of human responses to contact with surfaces, Part 1: Hot surfaces',
    edition: 'ISO 13732-1',
    year: 2006,
    publisher: 'ISO',
  },
  {
    id: 'iso-ts-15066',
    authors: 'International Organization for Standardization',
    title: 'Robots and robotic devices: Collaborative robots',
    edition: 'ISO/TS 15066',
    year: 2016,
    publisher: 'ISO',
  },
  {
    id: 'iso-9613-2',
    authors: 'International Organization for Standardization',
    title:
      'Acoustics: Attenuation of sound during propagation outdoors, Part 2: General method of calculation',
    edition: 'ISO 9613-2',
    year: 1996,
    publisher: 'ISO',
  },
] as const satisfies readonly Source[];
