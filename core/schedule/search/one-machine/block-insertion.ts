import type { Sequence } from './sequence.ts';
import { TINY } from './tiny.ts';

/**
 * Moves a stretch of jobs to anywhere in the order: the stretches [from, middle) and [middle, until) exchange their
 * positions, `from < middle < until` (the l-block insertion of A. Subramanian, M. Battarra and C. N. Potts, International
 * Journal of Production Research 52, 2014, pp. 2729-2742, from memory).
 *
 *     before [first … last] [second … ultimate] next   →   before [second … ultimate] [first … last] next
 *
 * Each of the two shifts in time as one block, and so does all that comes behind. With changeovers s, the end E of
 * `before`, and c the seconds of changeover saved (< 0: added) in all:
 *
 *     second … ultimate by   E + s(before, second) − end(last) − s(last, second)          < 0, mostly
 *     first … last      by   new end(ultimate) + s(ultimate, first) − E − s(before, first)   > 0, mostly
 *     next …            by   −c
 *     gain = cost of the three parts as they are − their cost so shifted + c × (weights of changeover and makespan)
 *
 * Worked out by hand, without changeovers, weights 1: A (3 s, due 10), B (4 s, due 20), C (2 s, due 3) end at 3, 7 and 9;
 * C is 6 s late. [A B] [C] → C A B: C shifts by −7 and ends at 2, A and B by +2 and end at 5 and 9, none late: gain 6.
 */

/** @param atLeast a smaller gain is not wanted: −Infinity as soon as it is surely below */
export function insertionGain(
  sequence: Sequence,
  from: number,
  middle: number,
  until: number,
  atLeast: number,
): number {
  sequence.refresh();
  const { order, jobs: n, end, setup, sum } = sequence;
  const limit = -atLeast;
  const before = from === 0 ? n : order[from - 1]!;
  const free = from === 0 ? 0 : end[from - 1]!;
  const first = order[from]!;
  const last = order[middle - 1]!;
  const second = order[middle]!;
  const ultimate = order[until - 1]!;
  const sooner = free + setup[before * n + second]! - end[middle - 1]! - setup[last * n + second]!;
  const later = end[until - 1]! + sooner + setup[ultimate * n + first]! - free - setup[before * n + first]!;
  let shift = end[middle - 1]! + later - end[until - 1]!;
  if (until < n) {
    const next = order[until]!;
    shift += setup[last * n + next]! - setup[ultimate * n + next]!;
  }
  let cost = sequence.changeoverCost * shift;
  const least = sequence.leastOfShift(from, middle, later);
  // What comes sooner can gain no more than all it costs.
  const most = sum[shift < 0 ? n : until]! - sum[middle]!;
  if (cost + least - most > limit) return -Infinity;
  const rest = sequence.leastOfShift(until, n, shift);
  const eased = sequence.leastOfShift(middle, until, sooner);
  cost += rest + least + eased;
  if (cost > limit) return -Infinity;
  // Each bound is replaced by the cost itself, while the gain may still be enough.
  cost += sequence.costOfShift(from, middle, later) - least;
  if (cost > limit) return -Infinity;
  cost += sequence.costOfShift(middle, until, sooner) - eased;
  if (shift === 0 || cost > limit) return cost > limit ? -Infinity : -cost;
  return -(cost + sequence.costOfShift(until, n, shift) - rest);
}

/** Applies the insertion of a stretch of this length that gains most. @returns false when none gains */
export function bestInsertion(sequence: Sequence, length: number): boolean {
  const { jobs } = sequence;
  let most = TINY;
  let best: readonly [number, number, number] | null = null;
  const consider = (from: number, middle: number, until: number) => {
    const gain = insertionGain(sequence, from, middle, until, most);
    if (gain <= most) return;
    most = gain;
    best = [from, middle, until];
  };
  for (let at = 0; at + length <= jobs; at++) {
    for (let until = at + length + 1; until <= jobs; until++) consider(at, at + length, until);
    for (let from = at - 1; from >= 0; from--) consider(from, at, at + length);
  }
  if (best === null) return false;
  sequence.exchange(...(best as readonly [number, number, number]));
  return true;
}
