import type { MotionLaw } from '../physics/motion-law.js';
import * as say from '../problem/show-messages.js';
import type { Report } from '../problem/trouble.js';
import { formatValue } from '../quantity/format.js';
import type { FeatureKind } from '../study/feature.js';
import { positionDimension, positionUnit } from '../study/feature-fields.js';
import type { Cue, Show } from '../study/show.js';
import type { CueRow } from './read-show.js';

/** The range in which cues can be played; null where study.csv could not be read. */
export interface PlayRange {
  kind: FeatureKind;
  lower: number | null;
  upper: number | null;
  latch: number | null;
}

/** Positions closer than this are the same: a tenth of a degree, a tenth of a millimetre. */
const tolerance: Record<FeatureKind, number> = { hinge: Math.PI / 1800, slide: 1e-4 };

/**
 * Makes the cue list: every cue knows where it starts and ends. Without a loop row the list repeats as a whole and
 * starts where its last cue ends; with one, the first cue starts at the lower stop and the loop must close.
 */
export function cueList(rows: readonly CueRow[], range: PlayRange, report: Report): Show {
  return new CueList(range, report).of(rows);
}

class CueList {
  constructor(
    private readonly range: PlayRange,
    private readonly report: Report,
  ) {}

  of(rows: readonly CueRow[]): Show {
    const mark = this.loopMark(rows);
    const cueRows = rows.filter(({ action }) => action !== 'loop' && action !== null);
    const lastMove = cueRows.findLast((row) => row.action === 'move');
    const start = mark === null && lastMove !== undefined ? lastMove.toPosition : this.range.lower;
    let at = start;
    let loopStart = start;
    const show: Show = { leadIn: [], loop: [] };
    for (const row of rows) {
      if (row === mark) loopStart = at;
      if (row.action === 'loop') continue;
      if (row.action === null) at = null;
      const cue = this.cueOf(row, at);
      if (cue !== null) {
        const played = mark !== null && row.line < mark.line ? show.leadIn : show.loop;
        played.push(cue);
        at = cue.toPosition;
      } else {
        // Its goal is not known, so nothing can be said of where the next cue starts.
        at = null;
      }
    }
    if (mark !== null) this.checkClosed(cueRows, at, loopStart);
    return show;
  }

  private loopMark(rows: readonly CueRow[]): CueRow | null {
    const [first, ...others] = rows.filter(({ action }) => action === 'loop');
    if (first === undefined) return null;
    for (const other of others) this.report(other.reading.at('action'), say.secondLoop(first.line));
    if (!rows.some((row) => row.line > first.line && row.action !== 'loop'))
      this.report(first.reading.at('action'), say.emptyLoop());
    return first;
  }

  /** The cue that a row stands for; null when where it is cannot be told. */
  private cueOf(row: CueRow, from: number | null): Cue | null {
    const { reading, name, action } = row;
    if (action === null) return null;
    const to = action === 'move' ? row.toPosition : from;
    if (action === 'move') this.checkMove(row, from);
    else this.checkStay(row, from);
    if (to === null || reading.failed.has('toPosition')) return null;
    return {
      name,
      action: action as Cue['action'],
      fromPosition: from ?? to,
      toPosition: to,
      durationS: reading.number('durationS') ?? 0,
      law: (reading.text('law') ?? 'poly-345') as MotionLaw,
      lightsFraction: reading.number('lightsFraction') ?? 0,
      note: reading.text('note') ?? '',
      line: row.line,
    };
  }

  private checkMove({ reading, name, toPosition: to }: CueRow, from: number | null): void {
    if (to === null) return;
    const { lower, upper } = this.range;
    const isBelow = lower !== null && to < lower - this.slack;
    const isAbove = upper !== null && to > upper + this.slack;
    if (isBelow || isAbove)
      this.report(reading.at('to'), say.beyondStop(name, this.shown(to), this.shownRange()));
    else if (from !== null && Math.abs(to - from) < 1e-9)
      this.report(reading.at('to'), say.moveNowhere(name, this.shown(to)));
  }

  private checkStay({ reading, name, action, toPosition: to }: CueRow, at: number | null): void {
    if (at === null) return;
    if (to !== null && Math.abs(to - at) > this.slack)
      this.report(reading.at('to'), say.cueJumps(name, this.shown(at), this.shown(to)));
    else if (action === 'rest') this.checkRest(reading, name, at);
  }

  private checkRest(reading: CueRow['reading'], name: string, at: number): void {
    const { lower, upper, latch } = this.range;
    if (lower === null || upper === null) return;
    const bearing = [lower, upper, ...(latch === null ? [] : [latch])];
    if (bearing.some((position) => Math.abs(position - at) <= this.slack)) return;
    const places = bearing
      .map((position) => this.shown(position))
      .join(', ')
      .replace(/, ([^,]*)$/, ' or $1');
    this.report(reading.at('action'), say.restInTheAir(name, this.shown(at), places));
  }

  private checkClosed(rows: readonly CueRow[], end: number | null, begin: number | null): void {
    const last = rows.at(-1);
    if (last === undefined || end === null || begin === null || Math.abs(end - begin) <= this.slack) return;
    this.report(last.reading.at('to'), say.loopDoesNotClose(last.name, this.shown(end), this.shown(begin)));
  }

  private get slack(): number {
    return tolerance[this.range.kind];
  }

  /** Between the stops, or beside the one that is known. */
  private shownRange(): string {
    const { lower, upper } = this.range;
    if (lower !== null && upper !== null) return `${this.shown(lower)} to ${this.shown(upper)}`;
    return lower === null ? `${this.shown(upper!)} or less` : `${this.shown(lower)} or more`;
  }

  private shown(position: number): string {
    const { kind } = this.range;
    return formatValue(position, positionUnit(kind), 4, positionDimension(kind));
  }
}
