/**
 * A seeded source of chance: the same seed gives the same numbers on every machine.
 * Source: G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8(14), 2003 (128-bit state, from memory).
 */
export class Rng {
  #a: number;
  #b: number;
  #c: number;
  #d: number;

  /** @param seed any number; its whole part modulo 2³² counts */
  constructor(seed: number) {
    this.#a = seed | 0;
    this.#b = 362436069;
    this.#c = 521288629;
    this.#d = 88675123;
    for (let k = 0; k < 32; k++) this.#bits();
  }

  #bits(): number {
    const t = this.#a ^ (this.#a << 11);
    this.#a = this.#b;
    this.#b = this.#c;
    this.#c = this.#d;
    this.#d = this.#d ^ (this.#d >>> 19) ^ t ^ (t >>> 8);
    return this.#d;
  }

  /** From 0 up to but not including 1. */
  next(): number {
    return (this.#bits() >>> 0) / 4294967296;
  }

  /** A whole number from 0 up to but not including `count` (≥ 1). */
  below(count: number): number {
    return (((this.#bits() >>> 0) * count) / 4294967296) | 0;
  }

  /** The same in an order drawn at random. Source: R. A. Fisher and F. Yates, in R. Durstenfeld's form (CACM 7(7), 1964; from memory). */
  shuffled<T>(list: readonly T[]): T[] {
    const order = [...list];
    for (let k = order.length - 1; k > 0; k--) {
      const other = this.below(k + 1);
      [order[k], order[other]] = [order[other]!, order[k]!];
    }
    return order;
  }
}
