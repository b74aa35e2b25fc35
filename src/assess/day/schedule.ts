import type { DayBlock } from '../../study/show.js';
import { chargeToFullS, socAfterCharge } from './charging.js';
import type { DayCharge, DaySegment, DaySwap } from './day-plan.js';

/** What a schedule is made from. */
export interface ScheduleParts {
  blocks: readonly DayBlock[];
  /** Mean current of each block. */
  currentsA: readonly number[];
  /** Of a full pack. */
  packChargeC: number;
  packCount: number;
  /** State of charge below which a pack must not come; where it does, the block goes dark. */
  floorFraction: number;
  chargeRatePerH: number;
}

/** A day played through with so many packs. */
export interface Schedule {
  segments: DaySegment[];
  swaps: Omit<DaySwap, 'fitsBlock'>[];
  charges: DayCharge[];
  socFractions: number[];
  /** Packs that were in use, in order of first use. */
  usedCount: number;
  /** When each pack was full again; null when it never was, or was used since. */
  fullAgainTimesS: (number | null)[];
  darkS: number;
}

/** A fresh pack must hold this much more than the one it replaces, or the swap is not worth it. */
const worthSwapping = 0.01;
const rounding = 1e-9;

/**
 * Play the day: swap as late as the allowed blocks permit, charge what was taken out wherever there is a charger.
 * One charger, one pack at a time. In a block that is off and allows swaps, the pack in use is topped up too.
 */
export function playDay(parts: ScheduleParts): Schedule {
  return new DayPlayer(parts).play();
}

class DayPlayer {
  private readonly schedule: Schedule;
  private readonly starts: number[] = [];
  private current = 0;
  private readonly seen = new Set([0]);
  /** Packs taken out, in the order in which they go on the charger. */
  private readonly waiting: number[] = [];

  constructor(private readonly parts: ScheduleParts) {
    let timeS = 0;
    for (const { durationS } of parts.blocks) {
      this.starts.push(timeS);
      timeS += durationS;
    }
    this.schedule = {
      segments: [],
      swaps: [],
      charges: [],
      socFractions: new Array<number>(parts.packCount).fill(1),
      usedCount: 1,
      fullAgainTimesS: new Array<number | null>(parts.packCount).fill(null),
      darkS: 0,
    };
  }

  play(): Schedule {
    this.parts.blocks.forEach((block, index) => {
      if (block.activity === 'off') this.playOff(block, index);
      else this.playPowered(block, index);
    });
    this.schedule.usedCount = this.seen.size;
    return this.schedule;
  }

  /** A swap in an off block comes at its start, so that the charger has the whole block. */
  private playOff(block: DayBlock, index: number): void {
    const startS = this.starts[index]!;
    const endS = startS + block.durationS;
    const toppedUp = block.swapAllowed && block.charger;
    if (block.swapAllowed && !this.lasts(index, this.socAfterTopUp(block))) this.swap(index, startS);
    const soc = this.soc;
    if (block.charger)
      this.charge(block, startS, endS, toppedUp ? [...this.waiting, this.current] : this.waiting);
    this.segment(block, startS, endS, soc, true);
  }

  private playPowered(block: DayBlock, index: number): void {
    const drain = this.drainOf(index);
    let timeS = this.starts[index]!;
    const endS = timeS + block.durationS;
    const { floorFraction } = this.parts;
    while (timeS < endS - rounding) {
      const lastsS = drain > 0 ? Math.max(0, this.soc - floorFraction) / drain : Number.POSITIVE_INFINITY;
      const untilS = Math.min(endS, timeS + lastsS);
      this.run(block, timeS, untilS, drain);
      timeS = untilS;
      if (timeS >= endS - rounding) break;
      if (block.swapAllowed && this.swap(index, timeS)) continue;
      this.goDark(block, timeS, endS);
      return;
    }
    if (block.swapAllowed && !this.lasts(index, this.soc)) this.swap(index, endS);
  }

  private run(block: DayBlock, fromS: number, toS: number, drain: number): void {
    if (toS <= fromS) return;
    const before = this.soc;
    this.schedule.socFractions[this.current] = before - drain * (toS - fromS);
    if (drain > 0) this.schedule.fullAgainTimesS[this.current] = null;
    if (block.charger) this.charge(block, fromS, toS, this.waiting);
    this.segment(block, fromS, toS, before, true);
  }

  private goDark(block: DayBlock, fromS: number, toS: number): void {
    if (block.charger) this.charge(block, fromS, toS, this.waiting);
    this.schedule.darkS += toS - fromS;
    this.segment(block, fromS, toS, this.soc, false);
  }

  private segment(block: DayBlock, startS: number, endS: number, before: number, powered: boolean): void {
    this.schedule.segments.push({
      block: block.block,
      activity: block.activity,
      startS,
      endS,
      packIndex: this.current,
      socStartFraction: before,
      socEndFraction: this.soc,
      powered,
    });
  }

  /** Share of a full pack that a block takes each second. */
  private drainOf(index: number): number {
    return this.parts.currentsA[index]! / this.parts.packChargeC;
  }

  private get soc(): number {
    return this.schedule.socFractions[this.current]!;
  }

  /** Whether a charge at the end of a block lasts until the next block that allows a swap, or to the end of the day. */
  private lasts(index: number, socFraction: number): boolean {
    const { blocks, floorFraction } = this.parts;
    let left = socFraction;
    for (let next = index + 1; next < blocks.length; next++) {
      if (blocks[next]!.swapAllowed) break;
      left -= this.drainOf(next) * blocks[next]!.durationS;
    }
    return left >= floorFraction - rounding;
  }

  /** What the pack in use would hold after an off block, if it is topped up there once the others are full. */
  private socAfterTopUp(block: DayBlock): number {
    if (!block.charger) return this.soc;
    const { chargeRatePerH } = this.parts;
    const othersS = this.waiting.reduce(
      (sum, pack) => sum + chargeToFullS(this.schedule.socFractions[pack]!, chargeRatePerH),
      0,
    );
    return socAfterCharge(this.soc, Math.max(0, block.durationS - othersS), chargeRatePerH);
  }

  /** Put the fullest other pack in. @returns whether there was a fuller one */
  private swap(blockIndex: number, timeS: number): boolean {
    const { socFractions } = this.schedule;
    let best = this.current;
    socFractions.forEach((soc, pack) => {
      if (pack !== this.current && soc > socFractions[best]! + rounding) best = pack;
    });
    if (socFractions[best]! < this.soc + worthSwapping) return false;
    this.schedule.swaps.push({
      block: this.parts.blocks[blockIndex]!.block,
      blockIndex,
      timeS,
      outPackIndex: this.current,
      inPackIndex: best,
      outSocFraction: this.soc,
      inSocFraction: socFractions[best]!,
    });
    const at = this.waiting.indexOf(best);
    if (at >= 0) this.waiting.splice(at, 1);
    this.waiting.push(this.current);
    this.current = best;
    this.seen.add(best);
    return true;
  }

  /** One pack after the other on the charger, as far as the time goes. */
  private charge(block: DayBlock, fromS: number, toS: number, packs: readonly number[]): void {
    const { chargeRatePerH } = this.parts;
    const { socFractions, charges, fullAgainTimesS } = this.schedule;
    let timeS = fromS;
    for (const pack of packs) {
      const before = socFractions[pack]!;
      const fullS = chargeToFullS(before, chargeRatePerH);
      if (fullS <= rounding || timeS >= toS - rounding) continue;
      const endS = Math.min(toS, timeS + fullS);
      const after = socAfterCharge(before, endS - timeS, chargeRatePerH);
      socFractions[pack] = after;
      charges.push({
        block: block.block,
        packIndex: pack,
        startS: timeS,
        endS,
        socStartFraction: before,
        socEndFraction: after,
      });
      if (after >= 1 - rounding) fullAgainTimesS[pack] = endS;
      timeS = endS;
    }
  }
}
