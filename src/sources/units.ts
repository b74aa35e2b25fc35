import type { Source } from './source.js';

/** Units and constants. */
export const unitSources = [
  {
    id: 'si-brochure',
    authors: 'Bureau International des Poids et Mesures',
    title: 'The International System of Units (SI)',
    edition: '9th ed.',
    year: 2019,
    publisher: 'BIPM',
  },
  {
    id: 'nist-sp-811',
    authors: 'A. Thompson, B. N. Taylor',
    title: 'Guide for the Use of the International System of Units (SI)',
    edition: 'Special Publication 811',
    year: 2008,
    publisher: 'National Institute of Standards and Technology',
  },
  {
    id: 'codata-2018',
    authors: 'E. Tiesinga, P. J. Mohr, D. B. Newell, B. N. Taylor',
    title: 'CODATA recommended values of the fundamental physical constants: 2018',
    edition: 'Reviews of Modern Physics 93, 025010',
    year: 2021,
  },
] as const satisfies readonly Source[];
