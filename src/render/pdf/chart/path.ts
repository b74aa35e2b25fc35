import { apply, type Matrix } from './matrix.js';

type Point = [x: number, y: number];

/** Steps of a path in page coordinates. */
export type Step =
  | { kind: 'move'; to: Point }
  | { kind: 'line'; to: Point }
  | { kind: 'curve'; control: [Point, Point]; to: Point }
  | { kind: 'close' };

/** A path under construction: points are mapped when they are added, so later moves of the origin leave it alone. */
export class Path {
  readonly steps: Step[] = [];
  /** Where the pen is, before mapping. */
  private pen: Point | null = null;

  moveTo(matrix: Matrix, x: number, y: number): void {
    this.steps.push({ kind: 'move', to: apply(matrix, x, y) });
    this.pen = [x, y];
  }

  lineTo(matrix: Matrix, x: number, y: number): void {
    this.steps.push({ kind: this.pen ? 'line' : 'move', to: apply(matrix, x, y) });
    this.pen = [x, y];
  }

  curveTo(matrix: Matrix, x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    if (!this.pen) this.moveTo(matrix, x1, y1);
    const control: [Point, Point] = [apply(matrix, x1, y1), apply(matrix, x2, y2)];
    this.steps.push({ kind: 'curve', control, to: apply(matrix, x, y) });
    this.pen = [x, y];
  }

  quadraticTo(matrix: Matrix, cx: number, cy: number, x: number, y: number): void {
    const [px, py] = this.pen ?? [cx, cy];
    const third = (from: number, to: number): number => from + ((to - from) * 2) / 3;
    this.curveTo(matrix, third(px, cx), third(py, cy), third(x, cx), third(y, cy), x, y);
  }

  close(): void {
    if (this.pen) this.steps.push({ kind: 'close' });
  }

  rect(matrix: Matrix, x: number, y: number, width: number, height: number): void {
    this.moveTo(matrix, x, y);
    this.lineTo(matrix, x + width, y);
    this.lineTo(matrix, x + width, y + height);
    this.lineTo(matrix, x, y + height);
    this.close();
    this.pen = [x, y];
  }

  /** A circular arc, as curves of at most a quarter turn each. */
  arc(
    matrix: Matrix,
    circle: { x: number; y: number; radius: number },
    from: number,
    to: number,
    isBackward: boolean,
  ): void {
    const { x, y, radius } = circle;
    const turn = sweep(from, to, isBackward);
    const count = Math.max(1, Math.ceil(Math.abs(turn) / (Math.PI / 2) - 1e-9));
    const step = turn / count;
    const reach = (4 / 3) * Math.tan(step / 4) * radius;
    this.lineTo(matrix, x + radius * Math.cos(from), y + radius * Math.sin(from));
    for (let index = 0; index < count; index++) {
      const [start, end] = [from + index * step, from + (index + 1) * step];
      const [cs, ss, ce, se] = [Math.cos(start), Math.sin(start), Math.cos(end), Math.sin(end)];
      this.curveTo(
        matrix,
        x + radius * cs - reach * ss,
        y + radius * ss + reach * cs,
        x + radius * ce + reach * se,
        y + radius * se - reach * ce,
        x + radius * ce,
        y + radius * se,
      );
    }
  }
}

/** Angle to turn through, in the canvas sense: a full circle at most. */
function sweep(from: number, to: number, isBackward: boolean): number {
  const full = 2 * Math.PI;
  const turn = to - from;
  if (isBackward) return -turn >= full ? -full : -(((-turn % full) + full) % full || (turn === 0 ? 0 : full));
  return turn >= full ? full : ((turn % full) + full) % full;
}
