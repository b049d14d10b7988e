import type { Problem } from '../problem.ts';
import type { Urgency } from './dispatch.ts';

/**
 * Earliest due date first; equal dates by the larger weight. On one machine it makes the largest lateness smallest.
 * Source: J. R. Jackson, research report 43, UCLA, 1955 (from memory).
 */
export function dueDateRule(problem: Problem): Urgency {
  const { due, weight, jobs } = problem;
  const order = Array.from({ length: jobs }, (_, j) => j).sort(
    (a, b) => compareTimes(due[a]!, due[b]!) || weight[b]! - weight[a]! || a - b,
  );
  const position = new Int32Array(jobs);
  order.forEach((job, k) => (position[job] = k));
  return (o) => -position[problem.jobOf[o]!]!;
}

/** By size, where infinite ones (no due date) are equal to each other. */
export const compareTimes = (a: number, b: number): number => (a === b ? 0 : a - b);
