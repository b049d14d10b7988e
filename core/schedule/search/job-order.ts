import type { Problem } from '../problem.ts';
import type { NumberedQueues } from './constructions.ts';

/** Queues that keep one job order on all machines; every operation has one machine (sameOrder problems). */
export function queuesInOrder(problem: Problem, order: readonly number[]): NumberedQueues {
  const queues: number[][] = Array.from({ length: problem.machines }, () => []);
  for (const j of order)
    for (let o = problem.firstOf[j]!; o < problem.firstOf[j + 1]!; o++)
      queues[problem.eligible[o]![0]!]!.push(o);
  return queues;
}

/** Jobs by the places of their first operations, queue by queue: one order from any queues. */
export function orderOf(problem: Problem, queues: NumberedQueues): number[] {
  const rank = new Float64Array(problem.jobs).fill(Infinity);
  for (const queue of queues)
    Array.from(queue).forEach(
      (o, place) => (rank[problem.jobOf[o]!] = Math.min(rank[problem.jobOf[o]!]!, place)),
    );
  return Array.from(rank.keys()).sort((a, b) => rank[a]! - rank[b]! || a - b);
}
