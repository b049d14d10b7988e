import type { CutPlan } from './plan.ts';

/** The best sheets found for a run so far. */
export interface CutAnswer {
  /** `runKey` of the run: it holds for that very input. */
  readonly key: string;
  readonly plan: CutPlan;
  /** Worked on to the end: no need to begin again by itself. */
  readonly settled: boolean;
}
