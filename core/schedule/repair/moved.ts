import type { Problem, Queues } from '../problem.ts';

/**
 * The fewest operations one has to take out and put elsewhere to make one set of queues from another of the same
 * operations: all but, on each machine, the longest series that keeps its order.
 * @returns their ids, in the order of the second set
 * Source: C. Schensted, Canadian Journal of Mathematics 13, 1961, pp. 179-191 (longest increasing subsequence; from
 * memory).
 */
export function movedOperations(before: Queues, after: Queues): string[] {
  return Object.entries(after).flatMap(([machine, ids]) => {
    const positions = new Map((before[machine] ?? []).map((id, position) => [id, position]));
    const stood = ids.filter((id) => positions.has(id));
    const stayed = new Set(longestIncreasing(stood.map((id) => positions.get(id)!)).map((at) => stood[at]!));
    return ids.filter((id) => !stayed.has(id));
  });
}

/** The same in a problem: where any number go on at once there is no order that could be changed, only the place. */
export function movedIn({ input }: Problem, before: Queues, after: Queues): string[] {
  const inOrder = new Set(input.machines.flatMap(({ id, unlimited }) => (unlimited ? [] : [id])));
  return Object.entries(after).flatMap(([machine, ids]) =>
    inOrder.has(machine)
      ? movedOperations({ [machine]: before[machine] ?? [] }, { [machine]: ids })
      : ids.filter((id) => !before[machine]?.includes(id)),
  );
}

/** Positions of a longest increasing subsequence of different numbers. */
function longestIncreasing(numbers: readonly number[]): number[] {
  /** Where the least last number of an increasing subsequence of each length is. */
  const least: number[] = [];
  const before = numbers.map((number, at) => {
    const found = least.findIndex((last) => numbers[last]! > number);
    const length = found === -1 ? least.length : found;
    least[length] = at;
    return least[length - 1] ?? null;
  });
  const longest: number[] = [];
  for (let at = least.at(-1) ?? null; at !== null; at = before[at] ?? null) longest.unshift(at);
  return longest;
}
