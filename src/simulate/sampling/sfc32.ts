const goldenRatio = 0x9e3779b9;
const warmUpRounds = 20;

/**
 * Random numbers from a seed: a small fast counting generator with 128 bits of state.
 *
 * The seed is hashed and the first rounds are thrown away, so that neighbouring seeds have nothing in common. Each
 * purpose has a stream of its own: a column drawn for one input stays as it is when another input is added.
 *
 * @source doty-humphrey, PractRand, sfc32 (from memory)
 */
export class Sfc32 {
  private a: number;
  private b: number;
  private c: number;
  private counter = 1;

  /**
   * @param seed whole number, 0 to 2⁵³
   * @param purpose names the stream: `latin hypercube of feature.massKg`
   */
  constructor(seed: number, purpose = '') {
    this.a = mixed(hashOf(purpose) ^ (seed % 4294967296));
    this.b = mixed((this.a + goldenRatio) ^ Math.floor(seed / 4294967296));
    this.c = mixed(this.b + goldenRatio);
    for (let round = 0; round < warmUpRounds; round++) this.word();
  }

  /** The next 32 bits, as a whole number with a sign. */
  word(): number {
    const sum = (((this.a + this.b) | 0) + this.counter) | 0;
    this.counter = (this.counter + 1) | 0;
    this.a = this.b ^ (this.b >>> 9);
    this.b = (this.c + (this.c << 3)) | 0;
    this.c = (((this.c << 21) | (this.c >>> 11)) + sum) | 0;
    return sum;
  }

  /** The next number, even in 0…1 with 53 bits: may be 0, never 1. */
  next(): number {
    const high = this.word() >>> 5;
    return (high * 67108864 + (this.word() >>> 6)) / 9007199254740992;
  }

  /** The next number of an exponential distribution with mean 1: at least 0, finite. */
  exponential(): number {
    return -Math.log(1 - this.next());
  }

  /**
   * A whole number from 0 up to one below the count, all equally likely.
   * @param count at least 1
   */
  below(count: number): number {
    return Math.floor(this.next() * count);
  }

  /** Brings a list into random order, in place; every order is equally likely. */
  shuffle(list: Int32Array | Float64Array): void {
    for (let last = list.length - 1; last > 0; last--) {
      const other = this.below(last + 1);
      const kept = list[last]!;
      list[last] = list[other]!;
      list[other] = kept;
    }
  }
}

/** Spreads 32 bits so that each bit of the input turns half of the bits of the output. */
function mixed(bits: number): number {
  let word = bits | 0;
  word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
  word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
  return word ^ (word >>> 16);
}

/** 32 bits of a text. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5 | 0;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return mixed(hash);
}
