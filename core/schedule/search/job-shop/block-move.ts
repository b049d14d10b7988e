import type { JobShopGraph } from './graph.ts';

/**
 * Moves operation `first` right behind `last` (forward), or `last` right ahead of `first`, both on one machine:
 *
 *     u v w   forward, u behind w →   v w u        u v w   backward, w ahead of u →   w u v
 *
 * Gain: the makespan before less the makespan after. It is estimated (`estimatedMakespan`) to choose a move, and known
 * once the graph is timed again.
 */
export interface BlockMove {
  readonly first: number;
  readonly last: number;
  readonly forward: boolean;
}

/**
 * Does the move surely leave no circle of waits? Forward where way(last) ≥ way(j), with j the step after `first` in its
 * job and way(o) the longest way from the start of o to the end of all: did a way lead from j to `last`, way(j) would be
 * the longer by the work of j. Backward, mirrored, where end(first) ≥ end(j), with j the step before `last` in its job.
 * Source: E. Balas and A. Vazacopoulos, Management Science 44, 1998, pp. 262-275 (conditions from memory).
 */
export function valid(graph: JobShopGraph, { first, last, forward }: BlockMove): boolean {
  return forward
    ? graph.wayFrom(last) >= graph.wayFrom(graph.jobAfter[first]!)
    : graph.endOf(first) >= graph.endOf(graph.jobBefore[last]!);
}

/** The operations a move touches, in the order they would then have. */
export function orderAfter(graph: JobShopGraph, { first, last, forward }: BlockMove): number[] {
  const stretch: number[] = [];
  for (let o = first; o !== last; o = graph.machineAfter[o]!) stretch.push(o);
  stretch.push(last);
  return forward ? [...stretch.slice(1), first] : [last, ...stretch.slice(0, -1)];
}

/**
 * The longest path through the operations touched, were the move made: a quick estimate of the new makespan. In their new
 * order, with PJ and SJ the steps before and after in the job, PM and SM the neighbours on the machine, p the work:
 *
 *     head(o) = max(end(PJ), end(PM))     way(o) = max(way(SJ), way(SM)) + p(o)     estimate = max over o of head + way
 *
 * Worked out by hand: u (4 s) then v (3 s) on one machine from 0, then nothing; the step after v takes 5 s, none follows
 * u. The makespan is 4 + 3 + 5 = 12. With v ahead: head(v) = 0, head(u) = 3; way(u) = 4, way(v) = max(5, 4) + 3 = 8.
 * The estimate is max(0 + 8, 3 + 4) = 8, the gain 4.
 * Source: Balas and Vazacopoulos 1998; E. Taillard, ORSA Journal on Computing 6, 1994, pp. 108-117.
 */
export function estimatedMakespan(
  graph: JobShopGraph,
  { first, last }: BlockMove,
  order: readonly number[],
): number {
  const heads: number[] = [];
  let free = graph.endOf(graph.machineBefore[first]!);
  for (const o of order) {
    const head = Math.max(free, graph.endOf(graph.jobBefore[o]!));
    heads.push(head);
    free = head + graph.seconds[o]!;
  }
  let rest = graph.wayFrom(graph.machineAfter[last]!);
  let longest = 0;
  for (let k = order.length - 1; k >= 0; k--) {
    const o = order[k]!;
    const way = Math.max(rest, graph.wayFrom(graph.jobAfter[o]!)) + graph.seconds[o]!;
    longest = Math.max(longest, heads[k]! + way);
    rest = way;
  }
  return longest;
}

/** Makes the move; heads and tails are not timed again. */
export function apply(graph: JobShopGraph, { first, last, forward }: BlockMove): void {
  if (forward) graph.insert(first, last, graph.machineAfter[last]!);
  else graph.insert(last, graph.machineBefore[first]!, first);
}
