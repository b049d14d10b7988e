import type { Problem } from '../problem.ts';
import type { Urgency } from './dispatch.ts';

/**
 * Most weight per second of work first. On one machine it makes the weighted flow time smallest.
 * Source: W. E. Smith, Naval Research Logistics Quarterly 3, 1956, pp. 59-66 (from memory).
 */
export function weightedShortestRule(problem: Problem): Urgency {
  return (o, machine) =>
    problem.weight[problem.jobOf[o]!]! / problem.seconds[o * problem.machines + machine]!;
}
