import type { Problem } from '../problem.ts';
import type { Urgency } from './dispatch.ts';
import { fastestSeconds, remainingSeconds } from './remaining.ts';

/**
 * Jobs by Johnson's rule, by the seconds of the first step against those of all later ones: shorter-first jobs by
 * rising first step, then the others by falling rest. It empties the shop soonest when every job goes through two
 * machines in the same order, all are ready and there are no changeovers.
 * Source: S. M. Johnson, Naval Research Logistics Quarterly 1(1), 1954, pp. 61-68.
 * @returns job numbers
 */
export function johnsonOrder(problem: Problem): number[] {
  const remaining = remainingSeconds(problem);
  const jobs = Array.from({ length: problem.jobs }, (_, j) => {
    const o = problem.firstOf[j]!;
    const first = fastestSeconds(problem, o);
    return { j, first, rest: remaining[o]! - first };
  });
  const early = jobs.filter((job) => job.first < job.rest).sort((a, b) => a.first - b.first || a.j - b.j);
  const late = jobs.filter((job) => job.first >= job.rest).sort((a, b) => b.rest - a.rest || a.j - b.j);
  return [...early, ...late].map((job) => job.j);
}

/** The jobs in Johnson's order. */
export function johnsonRule(problem: Problem): Urgency {
  const position = new Int32Array(problem.jobs);
  johnsonOrder(problem).forEach((job, k) => (position[job] = k));
  return (o) => -position[problem.jobOf[o]!]!;
}
