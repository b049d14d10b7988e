import { typedChances } from '../../core/report/typed-chances.ts';
import { wouldDo } from '../../core/report/would-do.ts';
import { planQuickly } from '../../core/planning/cut-run.ts';
import { planChances, whatHappened } from '../../core/learn/plan-chances.ts';

/** What is too long for the window's own thread: each a pure function, run by a worker (compute/worker.ts). */
export const computations = { whatHappened, planChances, typedChances, planQuickly, wouldDo } as const;

export type Computations = typeof computations;
export type Computation = keyof Computations;

/** Window → worker. */
export interface Asked {
  readonly number: number;
  readonly what: Computation;
  readonly input: readonly unknown[];
}

/** Worker → window; `trouble` is set when it could not be computed. */
export interface Answered {
  readonly number: number;
  readonly value?: unknown;
  readonly trouble?: string;
}
