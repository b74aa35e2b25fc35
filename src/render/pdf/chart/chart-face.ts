import type { Face } from '../style.js';

/** Which face of the report a chart's text is set in. */
export function chartFace(weight: number | string | undefined, style: string | undefined): Face {
  if (weight === 'bold' || Number(weight) >= 600) return 'strong';
  return style === 'italic' ? 'emphasis' : 'regular';
}
