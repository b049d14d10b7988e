import type { LiveQueues } from './live-queues.ts';

/**
 * Queues with their objective, for a search that tries a change, prices it, and keeps it or takes it back.
 */
export interface Trial {
  readonly live: LiveQueues;
  /** Objective of the queues last kept. */
  readonly objective: number;
  /** End of every operation in the queues last kept. */
  readonly end: Float64Array;
  /** Operations timed so far, a measure of work done. */
  readonly work: number;
  /**
   * Objective after the shifts made on `live` since the last `keep`, less the objective before. It may stop early and
   * say Infinity when the change surely costs more than `limit`, or when the queues then wait for each other.
   */
  price(limit: number): number;
  /** Makes the change priced last final. */
  keep(): void;
  /** Takes the change back. */
  undo(): void;
  /** Starts again from these queues. */
  load(queues: readonly ArrayLike<number>[]): void;
}
