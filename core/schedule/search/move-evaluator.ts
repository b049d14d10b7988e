import type { LiveQueues } from './live-queues.ts';

/**
 * Queues with their objective, for a search that applies a move, evaluates it, and commits it or rolls it back.
 */
export interface MoveEvaluator {
  readonly live: LiveQueues;
  /** Objective of the queues last committed. */
  readonly objective: number;
  /** End of every operation in the queues last committed. */
  readonly end: Float64Array;
  /** Operations timed so far, a measure of work done. */
  readonly work: number;
  /**
   * Objective after the shifts made on `live` since the last `commit`, less the objective before. It may stop early and
   * say Infinity when the change surely costs more than `limit`, or when the queues then wait for each other.
   */
  evaluate(limit: number): number;
  /** Makes the change evaluated last final. */
  commit(): void;
  /** Takes the change back. */
  rollback(): void;
  /** Starts again from these queues. */
  load(queues: readonly ArrayLike<number>[]): void;
}
