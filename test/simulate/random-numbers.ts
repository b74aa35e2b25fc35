/** Uniform numbers in 0…1 from a seed (mulberry32, public domain), so that random studies stay the same. */
export function seededNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Draws of the kinds that tests need, from one stream of uniform numbers. */
export class Draws {
  private readonly next: () => number;
  constructor(seed: number) {
    this.next = seededNumbers(seed);
  }
  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }
  /** Even in the logarithm. */
  scaled(low: number, high: number): number {
    return low * (high / low) ** this.next();
  }
  whole(low: number, high: number): number {
    return Math.floor(this.between(low, high + 1));
  }
  pick<T>(list: readonly T[]): T {
    return list[Math.min(list.length - 1, Math.floor(this.next() * list.length))]!;
  }
  chance(probability: number): boolean {
    return this.next() < probability;
  }
}
