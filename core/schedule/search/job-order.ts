import type { Problem } from '../problem.ts';
import type { NumberedQueues } from '../numbered-queues.ts';

/** Queues that keep one job order on all machines; every operation has one machine (sameOrder problems). */
export function queuesInOrder(problem: Problem, order: readonly number[]): NumberedQueues {
  const queues: number[][] = Array.from({ length: problem.machines }, () => []);
  for (const j of order)
    for (let o = problem.firstOf[j]!; o < problem.firstOf[j + 1]!; o++)
      queues[problem.eligible[o]![0]!]!.push(o);
  return queues;
}

/** Jobs by the positions of their first operations, queue by queue: one order from any queues. */
export function orderOf(problem: Problem, queues: NumberedQueues): number[] {
  const positionOf = new Float64Array(problem.jobs).fill(Infinity);
  for (const queue of queues)
    Array.from(queue).forEach(
      (o, position) => (positionOf[problem.jobOf[o]!] = Math.min(positionOf[problem.jobOf[o]!]!, position)),
    );
  return Array.from(positionOf.keys()).sort((a, b) => positionOf[a]! - positionOf[b]! || a - b);
}
