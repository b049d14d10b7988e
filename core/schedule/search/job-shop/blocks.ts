import type { Rng } from '../rng.ts';
import type { JobShopGraph } from './graph.ts';

/** Moves operation `first` right behind `last` (forward), or `last` right ahead of `first`. */
export interface BlockMove {
  readonly first: number;
  readonly last: number;
  readonly forward: boolean;
}

/** One longest path, start to end; where there is a choice, by lot. */
function criticalPath(graph: JobShopGraph, rng: Rng): number[] {
  const path: number[] = [];
  let o = -1;
  let ties = 0;
  for (let k = 0; k < graph.operations; k++)
    if (graph.endOf(k) === graph.makespan && rng.below(++ties) === 0) o = k;
  while (o >= 0) {
    path.push(o);
    const job = graph.jobBefore[o]!;
    const machine = graph.machineBefore[o]!;
    const byJob = job >= 0 && graph.endOf(job) === graph.head[o];
    const byMachine = machine >= 0 && graph.endOf(machine) === graph.head[o];
    o = byMachine && (!byJob || rng.next() < 0.5) ? machine : byJob ? job : -1;
  }
  return path.reverse();
}

/**
 * Moves that can shorten a longest path: within each critical block, an operation goes right behind the block's last or
 * right ahead of its first, where that surely leaves no circle of waits.
 * Source: E. Balas and A. Vazacopoulos, Management Science 44, 1998, pp. 262-275 (conditions from memory).
 */
export function blockMoves(graph: JobShopGraph, rng: Rng): BlockMove[] {
  const path = criticalPath(graph, rng);
  const moves: BlockMove[] = [];
  for (let from = 0, until = 1; from < path.length; from = until++) {
    while (until < path.length && graph.machineOf[path[until]!] === graph.machineOf[path[from]!]) until += 1;
    const block = path.slice(from, until);
    const first = block[0]!;
    const last = block.at(-1)!;
    for (const o of block.slice(0, -1))
      if (graph.wayFrom(last) >= graph.wayFrom(graph.jobAfter[o]!))
        moves.push({ first: o, last, forward: true });
    // In a block of two both ways are the same swap.
    if (block.length === 2) continue;
    for (const o of block.slice(1))
      if (graph.endOf(first) >= graph.endOf(graph.jobBefore[o]!))
        moves.push({ first, last: o, forward: false });
  }
  return moves;
}

/** The operations a move touches, in the order they would then have. */
export function orderAfter(graph: JobShopGraph, { first, last, forward }: BlockMove): number[] {
  const stretch: number[] = [];
  for (let o = first; o !== last; o = graph.machineAfter[o]!) stretch.push(o);
  stretch.push(last);
  return forward ? [...stretch.slice(1), first] : [last, ...stretch.slice(0, -1)];
}

/**
 * The longest path through the operations touched, were the move made: a quick estimate of the new makespan.
 * Source: Balas and Vazacopoulos 1998; E. Taillard, ORSA Journal on Computing 6, 1994, pp. 108-117.
 */
export function estimate(graph: JobShopGraph, { first, last }: BlockMove, order: readonly number[]): number {
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

/** Makes the move; heads and suffix bounds are not timed again. */
export function makeMove(graph: JobShopGraph, { first, last, forward }: BlockMove): void {
  if (forward) graph.position(first, last, graph.machineAfter[last]!);
  else graph.position(last, graph.machineBefore[first]!, first);
}
