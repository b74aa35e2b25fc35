import type { Source } from './source.js';

/** Batteries. */
export const cellSources = [
  {
    id: 'ai-2020',
    authors: 'W. Ai, L. Kraft, J. Sturm, A. Jossen, B. Wu',
    title: 'Electrochemical thermal-mechanical modelling of stress inhomogeneity in lithium-ion pouch cells',
    edition: 'Journal of the Electrochemical Society 167, 013512',
    year: 2020,
  },
  {
    id: 'reniers-2019',
    authors: 'J. M. Reniers, G. Mulder, D. A. Howey',
    title:
      'Review and performance comparison of mechanical-chemical degradation models for lithium-ion batteries',
    edition: 'Journal of the Electrochemical Society 166, A3189',
    year: 2019,
  },
  {
    id: 'kawakita-2021',
    authors: 'A. Kawakita de Souza',
    title: 'Discharge data of lithium iron phosphate cells',
    edition: 'Mendeley Data, doi 10.17632/p8kf893yv3.1',
    year: 2021,
  },
  {
    id: 'cell-21700-rate-tests',
    authors: 'openly licensed measurements; authors not recorded',
    title: 'Rate tests of a cylindrical 21700 cell of 5 Ah',
    edition: '',
    year: null,
  },
  {
    id: 'nimh-module-table',
    authors: 'openly licensed vehicle model; authors not recorded',
    title: 'Voltage table of a nickel-metal hydride vehicle module',
    edition: '',
    year: null,
  },
  {
    id: 'plett',
    authors: 'G. L. Plett',
    title: 'Battery Management Systems, Volume I: Battery Modeling',
    edition: '',
    year: 2015,
    publisher: 'Artech House',
  },
  {
    id: 'iata-batteries',
    authors: 'International Air Transport Association; aviation authorities',
    title: 'Public guidance on lithium batteries carried by passengers',
    edition: 'reissued yearly',
    year: null,
  },
] as const satisfies readonly Source[];
