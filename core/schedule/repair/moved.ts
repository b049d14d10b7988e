import type { Queues } from '../problem.ts';

/**
 * The fewest operations one has to take out and put elsewhere to make one set of queues from another of the same
 * operations: all but, on each machine, the longest series that keeps its order.
 * Source: C. Schensted, Canadian Journal of Mathematics 13, 1961, pp. 179-191 (longest increasing subsequence; from
 * memory).
 */
export function movedOperations(before: Queues, after: Queues): number {
  let moved = 0;
  for (const [machine, ids] of Object.entries(after)) {
    const ranks = new Map((before[machine] ?? []).map((id, rank) => [id, rank]));
    const stayed = ids.flatMap((id) => ranks.get(id) ?? []);
    moved += ids.length - longestIncreasing(stayed);
  }
  return moved;
}

/** Length of the longest increasing subsequence of different numbers. */
function longestIncreasing(numbers: readonly number[]): number {
  /** The least last number of an increasing subsequence of each length. */
  const least: number[] = [];
  for (const number of numbers) {
    const at = least.findIndex((last) => last > number);
    least[at === -1 ? least.length : at] = number;
  }
  return least.length;
}
