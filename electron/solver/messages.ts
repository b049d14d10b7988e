import type { ProblemInput, Queues, Terms } from '../../core/schedule/problem.ts';

/** Host → solver. Every message names its run; a stale one is ignored. */
export type ToSolver =
  | {
      readonly kind: 'start';
      readonly runId: string;
      readonly problem: ProblemInput;
      /** The plan as it stands: the search never returns a worse one. */
      readonly queues: Queues;
      readonly seed: number;
      readonly budgetMs: number;
    }
  | { readonly kind: 'stop'; readonly runId: string };

/** The best plan so far and what it is worth. */
export interface Best {
  readonly queues: Queues;
  readonly objective: number;
  readonly terms: Terms;
}

/** Solver → host. */
export type FromSolver =
  | {
      readonly kind: 'progress' | 'done';
      readonly runId: string;
      readonly seconds: number;
      readonly step: number;
      readonly evaluations: number;
      readonly bound: number | null;
      /** Null when no better one was found since the last message. */
      readonly best: Best | null;
    }
  | { readonly kind: 'failed'; readonly runId: string; readonly message: string };
