import { planChances, typedChances, whatHappened } from '../../core/report/chances.ts';

/** What is too long for the window's own thread: each a pure function, done by a worker (reckon/worker.ts). */
export const reckonings = { whatHappened, planChances, typedChances } as const;

export type Reckonings = typeof reckonings;
export type Reckoning = keyof Reckonings;

/** Window → worker. */
export interface Asked {
  readonly number: number;
  readonly what: Reckoning;
  readonly input: readonly unknown[];
}

/** Worker → window; `trouble` is set when it could not be reckoned. */
export interface Answered {
  readonly number: number;
  readonly value?: unknown;
  readonly trouble?: string;
}
