import type { NumberedQueues } from '../numbered-queues.ts';

/** The best plan a search has found so far. */
export interface Incumbent {
  readonly queues: NumberedQueues;
  readonly objective: number;
  readonly evaluations: number;
  /** Every plan was tried: none is better. */
  readonly proven?: true;
}
