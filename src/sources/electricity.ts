import type { Source } from './source.js';

/** Motors, pulses and wire. */
export const electricitySources = [
  {
    id: 'hughes-drury',
    authors: 'A. Hughes, B. Drury',
    title: 'Electric Motors and Drives: Fundamentals, Types and Applications',
    edition: '4th ed.',
    year: 2013,
    publisher: 'Newnes',
  },
  {
    id: 'mohan',
    authors: 'N. Mohan, T. M. Undeland, W. P. Robbins',
    title: 'Power Electronics: Converters, Applications, and Design',
    edition: '3rd ed.',
    year: 2003,
    publisher: 'Wiley',
  },
  {
    id: 'iec-60028',
    authors: 'International Electrotechnical Commission',
    title: 'International standard of resistance for copper',
    edition: 'IEC 60028',
    year: 1925,
    publisher: 'IEC',
  },
  {
    id: 'astm-b258',
    authors: 'ASTM International',
    title:
      'Standard Specification for Standard Nominal Diameters and Cross-Sectional Areas of AWG Sizes of Solid Round Wires Used as Electrical Conductors',
    edition: 'ASTM B258',
    year: 2018,
    publisher: 'ASTM International',
  },
] as const satisfies readonly Source[];
