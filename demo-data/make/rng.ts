/** A seeded stream of numbers, so that the demo files come out the same every time. */
export interface Rng {
  /** At least 0, below 1. */
  next(): number;
  /** A whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number;
  chance(share: number): boolean;
  pick<T>(items: readonly T[]): T;
  /** An item drawn by weight. */
  weighted<T>(items: readonly (readonly [T, number])[]): T;
  /** Normally distributed about 0 with standard deviation 1 (Box and Muller, 1958). */
  normal(): number;
}

/** Tommy Ettinger's mulberry32 (2017, public domain; from memory). */
export function mulberry32(seed: number): Rng {
  let state = seed | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const pick = <T>(items: readonly T[]): T => items[Math.floor(next() * items.length)] as T;
  return {
    next,
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
    chance: (share) => next() < share,
    pick,
    weighted<T>(items: readonly (readonly [T, number])[]): T {
      let left = next() * items.reduce((sum, [, weight]) => sum + weight, 0);
      for (const [item, weight] of items) {
        left -= weight;
        if (left < 0) return item;
      }
      return pick(items)[0];
    },
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
