import type { Source } from './source.js';

/** Numerical methods, sensitivity and ranking. */
export const methodSources = [
  {
    id: 'hairer-norsett-wanner',
    authors: 'E. Hairer, S. P. Nørsett, G. Wanner',
    title: 'Solving Ordinary Differential Equations I: Nonstiff Problems',
    edition: '2nd ed.',
    year: 1993,
    publisher: 'Springer',
  },
  {
    id: 'cox-matthews',
    authors: 'S. M. Cox, P. C. Matthews',
    title: 'Exponential time differencing for stiff systems',
    edition: 'Journal of Computational Physics 176(2):430–455',
    year: 2002,
  },
  {
    id: 'brent',
    authors: 'R. P. Brent',
    title: 'Algorithms for Minimization without Derivatives',
    edition: '',
    year: 1973,
    publisher: 'Prentice-Hall',
  },
  {
    id: 'ishigami-homma',
    authors: 'T. Ishigami, T. Homma',
    title: 'An importance quantification technique in uncertainty analysis for computer models',
    edition:
      'Proceedings of the First International Symposium on Uncertainty Modeling and Analysis, IEEE, 398–403',
    year: 1990,
  },
  {
    id: 'saltelli',
    authors:
      'A. Saltelli, M. Ratto, T. Andres, F. Campolongo, J. Cariboni, D. Gatelli, M. Saisana, S. Tarantola',
    title: 'Global Sensitivity Analysis: The Primer',
    edition: '',
    year: 2008,
    publisher: 'Wiley',
  },
  {
    id: 'jansen',
    authors: 'M. J. W. Jansen',
    title: 'Analysis of variance designs for model output',
    edition: 'Computer Physics Communications 117(1–2):35–43',
    year: 1999,
  },
  {
    id: 'mckay',
    authors: 'M. D. McKay, R. J. Beckman, W. J. Conover',
    title:
      'A comparison of three methods for selecting values of input variables in the analysis of output from a computer code',
    edition: 'Technometrics 21(2):239–245',
    year: 1979,
  },
  {
    id: 'lahdelma-salminen',
    authors: 'R. Lahdelma, P. Salminen',
    title: 'SMAA-2: Stochastic multicriteria acceptability analysis for group decision making',
    edition: 'Operations Research 49(3):444–454',
    year: 2001,
  },
] as const satisfies readonly Source[];
