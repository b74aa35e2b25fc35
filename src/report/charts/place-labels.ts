/** A point with its labels, the wanted one first; heights run from 0 to 1, upwards. */
export interface LabelledPoint {
  x: number;
  y: number;
  /** What may stand beside it; a later one only where an earlier one would cover something. */
  notes: readonly string[];
}

/** Where a label stands beside its point. */
interface Side {
  align: 'left' | 'right' | 'center';
  /** Shift in points on paper, to the right and downwards. */
  dx: number;
  dy: number;
}

/** Size of a letter as a share of the figure's height, about. */
const letter = { width: 0.026, height: 0.062 };

/** Points of paper per share of the figure's height, about. */
const paper = 165;

const symbol = 0.03;

/** A label that covers more than this gives way to a shorter one. */
const bearable = 0.02;

/** A label and where it stands. */
export interface LabelPlace extends Side {
  note: string;
}

const choices: Side[] = [
  { align: 'left', dx: 6, dy: 0 },
  { align: 'right', dx: -6, dy: 0 },
  { align: 'center', dx: 0, dy: -9 },
  { align: 'center', dx: 0, dy: 10 },
  { align: 'left', dx: 6, dy: -9 },
  { align: 'left', dx: 6, dy: 9 },
  { align: 'right', dx: -6, dy: -9 },
  { align: 'right', dx: -6, dy: 9 },
  { align: 'left', dx: 6, dy: -18 },
  { align: 'right', dx: -6, dy: -18 },
];

/** A rectangle of the figure. */
export interface Frame {
  left: number;
  right: number;
  low: number;
  high: number;
}

/**
 * Puts a label beside each point where it covers least of the other points and labels; first come, first placed.
 *
 * @param width of the figure as a multiple of its height
 * @param obstacles lines and bars that labels keep off, same scale as the points
 */
export function placeLabels(
  points: readonly LabelledPoint[],
  width: number,
  obstacles: readonly Frame[] = [],
): LabelPlace[] {
  const symbols = points.map(({ x, y }) => ({
    ...{ left: x - symbol, right: x + symbol, low: y - symbol, high: y + symbol },
  }));
  const taken: Frame[] = [...symbols, ...obstacles];
  return points.map((point, index) => {
    const others = taken.filter((_, place) => place !== index);
    const cost = (side: Side, note: string): number => {
      const frame = frameOf(point, side, note.length);
      const outside = Math.max(0, -frame.left) + Math.max(0, frame.right - width);
      return others.reduce((sum, other) => sum + overlap(frame, other), outside * 100);
    };
    const tried = point.notes.map((note) => {
      const costs = choices.map((side) => cost(side, note));
      const least = Math.min(...costs);
      return { note, least, side: choices[costs.indexOf(least)]! };
    });
    const best = tried.find(({ least }) => least < bearable) ?? tried.at(-1)!;
    taken.push(frameOf(point, best.side, best.note.length));
    return { ...best.side, note: best.note };
  });
}

function frameOf({ x, y }: LabelledPoint, { align, dx, dy }: Side, length: number): Frame {
  const wide = length * letter.width;
  const at = x + dx / paper;
  const left = align === 'left' ? at : align === 'right' ? at - wide : at - wide / 2;
  const middle = y - dy / paper;
  return { left, right: left + wide, low: middle - letter.height / 2, high: middle + letter.height / 2 };
}

function overlap(a: Frame, b: Frame): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const high = Math.min(a.high, b.high) - Math.max(a.low, b.low);
  return wide > 0 && high > 0 ? wide * high * 100 + 0.01 : 0;
}
