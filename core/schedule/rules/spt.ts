import type { Problem, Queues } from '../problem.ts';
import { dispatch } from './dispatch.ts';

/**
 * Shortest work first. On one machine it makes the mean flow time smallest.
 * Source: W. E. Smith, Naval Research Logistics Quarterly 3, 1956, pp. 59-66 (from memory).
 */
export function sptQueues(problem: Problem): Queues {
  return dispatch(problem, (o, machine) => -problem.seconds[o * problem.machines + machine]!);
}
