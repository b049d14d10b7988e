import type { Rng } from '../../../rng.ts';
import { valid, type BlockMove } from './block-move.ts';
import type { JobShopGraph } from './graph.ts';

/** One longest path, start to end; where there is a choice, at random. */
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
 * The valid moves that can shorten a longest path drawn at random: within each critical block (a stretch of the path on one
 * machine), an operation goes right behind the block's last or right ahead of its first. Moves inside a block leave its
 * length as it is, so that only these can gain.
 */
export function blockMoves(graph: JobShopGraph, rng: Rng): BlockMove[] {
  const path = criticalPath(graph, rng);
  const moves: BlockMove[] = [];
  const consider = (first: number, last: number, forward: boolean) => {
    const move = { first, last, forward };
    if (valid(graph, move)) moves.push(move);
  };
  for (let from = 0, until = 1; from < path.length; from = until++) {
    while (until < path.length && graph.machineOf[path[until]!] === graph.machineOf[path[from]!]) until += 1;
    const first = path[from]!;
    const last = path[until - 1]!;
    for (let k = from; k < until - 1; k++) consider(path[k]!, last, true);
    // In a block of two both ways are the same swap.
    if (until - from > 2) for (let k = from + 1; k < until; k++) consider(first, path[k]!, false);
  }
  return moves;
}
