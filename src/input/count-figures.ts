import type { Study } from '../study/study.js';

/** How many numbers of a study its makers gave, and how many were assumed. */
export function countFigures(study: Study): { given: number; assumed: number } {
  const numbers = study.provenance.filter(({ value }) => typeof value === 'number');
  const of = (origin: string) => numbers.filter((entry) => entry.origin === origin).length;
  return { given: of('given'), assumed: of('assumed') };
}
