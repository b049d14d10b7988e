import type { Sequence } from './sequence.ts';
import { TINY } from './tiny.ts';

/**
 * Two jobs exchange their positions `from` and `to`, at least one job between them (neighbours: a block insertion).
 *
 *     before A [second … last] B next   →   before B [second … last] A next
 *
 * The jobs between shift in time as one block, and so does all that comes behind. With changeovers s, work p, the end E
 * of `before`, and c the seconds of changeover saved (< 0: added) in all:
 *
 *     new end(B) = E + s(before, B) + p(B)        second … last by   new end(B) + s(B, second) − end(A) − s(A, second)
 *     new end(A) = new end(last) + s(last, A) + p(A)        next … by   −c
 *     gain = cost of A, B and the two parts as they are − their cost then + c × (weights of changeover and makespan)
 *
 * Worked out by hand, without changeovers, weights 1: A (3 s, due 10), M (4 s, due 20), B (2 s, due 3) end at 3, 7 and 9;
 * B is 6 s late. B M A: B ends at 2, M shifts by −1 to 6, A ends at 9, none late: gain 6.
 */

/** @param atLeast a smaller gain is not wanted: −Infinity as soon as it is surely below */
export function swapGain(sequence: Sequence, from: number, to: number, atLeast: number): number {
  sequence.refresh();
  const { order, jobs: n, end, setup, sum, seconds } = sequence;
  const limit = -atLeast;
  const before = from === 0 ? n : order[from - 1]!;
  const free = from === 0 ? 0 : end[from - 1]!;
  const a = order[from]!;
  const b = order[to]!;
  const second = order[from + 1]!;
  const last = order[to - 1]!;
  const endB = free + setup[before * n + b]! + seconds[b]!;
  const sooner = endB + setup[b * n + second]! - end[from]! - setup[a * n + second]!;
  const endA = end[to - 1]! + sooner + setup[last * n + a]! + seconds[a]!;
  let shift = endA - end[to]!;
  if (to + 1 < n) shift += setup[a * n + order[to + 1]!]! - setup[b * n + order[to + 1]!]!;
  let cost = sequence.changeoverCost * shift;
  const rest = sequence.leastOfShift(to + 1, n, shift);
  const between = sequence.leastOfShift(from + 1, to, sooner);
  cost += sequence.costAt(a, endA) + sequence.costAt(b, endB) + rest + between;
  cost += sum[from]! - sum[from + 1]! + sum[to]! - sum[to + 1]!;
  if (cost > limit) return -Infinity;
  // Each bound is replaced by the cost itself, while the gain may still be enough.
  cost += sequence.costOfShift(from + 1, to, sooner) - between;
  if (shift === 0 || cost > limit) return cost > limit ? -Infinity : -cost;
  return -(cost + sequence.costOfShift(to + 1, n, shift) - rest);
}

/** Applies the swap that gains most. @returns false when none gains */
export function bestSwap(sequence: Sequence): boolean {
  const { jobs } = sequence;
  let most = TINY;
  let first = -1;
  let second = -1;
  for (let from = 0; from < jobs; from++)
    for (let to = from + 2; to < jobs; to++) {
      const gain = swapGain(sequence, from, to, most);
      if (gain <= most) continue;
      most = gain;
      first = from;
      second = to;
    }
  if (first >= 0) sequence.swap(first, second);
  return first >= 0;
}
