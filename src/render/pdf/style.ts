import { palette } from '../palette.js';

export { cautionColours, palette } from '../palette.js';

/** Sizes in points; 72 to the inch. */
export interface TextStyle {
  size: number;
  /** Distance from line to line. */
  leading: number;
  face: Face;
  colour: string;
}

/** Faces of the one type family that the report uses. */
export type Face = 'regular' | 'strong' | 'emphasis';

function style(
  size: number,
  leading: number,
  face: Face = 'regular',
  colour: string = palette.ink,
): TextStyle {
  return { size, leading, face, colour };
}

/** The type scale: every size of the report. */
export const type = {
  title: style(19, 23, 'strong'),
  heading: style(12, 15.5, 'strong', palette.accent),
  subheading: style(9.6, 12.6, 'strong'),
  answer: style(12.6, 17, 'strong'),
  lead: style(9.8, 13.4, 'regular', palette.muted),
  body: style(9.2, 12.6),
  small: style(7.9, 10.6, 'regular', palette.muted),
  table: style(8, 10.2),
  compactTable: style(7.7, 9),
  tableHead: style(7.6, 9.6, 'strong', palette.muted),
  caption: style(7.9, 10.4, 'regular', palette.muted),
  headline: style(17, 20.5, 'strong'),
  furniture: style(7.4, 9.6, 'regular', palette.muted),
} as const;

/** Paper and the frame that text stands in. */
export interface Geometry {
  width: number;
  height: number;
  left: number;
  top: number;
  textWidth: number;
  bottom: number;
}

/** Paper of a report, upright. */
export type PageSize = 'A4' | 'Letter';

const papers: Record<PageSize, [width: number, height: number]> = {
  A4: [595.28, 841.89],
  Letter: [612, 792],
};

/** The frame of a page: equal margins left and right, room for the running head and foot. */
export function geometryOf(size: PageSize): Geometry {
  const [width, height] = papers[size];
  const left = 48;
  // A lower page is filled further, so that what stands on one of the higher stands on one of it.
  const [top, foot] = height < papers.A4[1] ? [50, 40] : [57, 46];
  return { width, height, left, top, textWidth: width - 2 * left, bottom: height - foot };
}

/** White space between the columns of a side-by-side block. */
export const gutter = 20;

/** Widths of columns that share a width by their shares, gutters taken off. */
export function columnWidths(width: number, shares: number[]): number[] {
  const free = width - gutter * (shares.length - 1);
  const sum = shares.reduce((total, share) => total + share, 0);
  return shares.map((share) => (free * share) / sum);
}
