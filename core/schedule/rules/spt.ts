import type { Problem } from '../problem.ts';
import type { Urgency } from './dispatch.ts';

/**
 * Shortest work first. On one machine it makes the mean flow time smallest.
 * Source: W. E. Smith, Naval Research Logistics Quarterly 3, 1956, pp. 59-66 (from memory).
 */
export function shortestRule(problem: Problem): Urgency {
  return (o, machine) => -problem.seconds[o * problem.machines + machine]!;
}
