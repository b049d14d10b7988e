import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { call } from './call.ts';

/** A plan at a glance, by the due dates that customers were given (core/planning/figures.ts). */
const planGist = z.strictObject({
  lateLines: z.int(),
  lateSeconds: z.number(),
  changeoverSeconds: z.number(),
});

/** Where a run of the search stands. Every message names its run, so that a stale one can be ignored. */
export const searchState = z.strictObject({
  jobId: z.string(),
  phase: z.enum(['running', 'finished', 'stopped', 'failed']),
  seconds: z.number(),
  budgetSeconds: z.number(),
  step: z.int(),
  evaluations: z.int(),
  objective: z.number().nullable(),
  /** Objective of the plan the run began from. */
  startObjective: z.number().nullable(),
  /** The best plan so far, and the one that it began from. */
  gist: planGist,
  startGist: planGist,
  /** Proven lower bound on the objective, where one is known. */
  bound: z.number().nullable(),
  /** Objective against time, for the falling line; at most 200 points. */
  curve: z.array(z.strictObject({ seconds: z.number(), objective: z.number() })),
  /** The history's step that the plan found became; null: nothing was stored. */
  stepId: z.int().nullable(),
  /** Runs joined after the search because the stock saved is worth the time it costs; null: none. */
  joins: z.strictObject({ count: z.int(), savedCents: z.number() }).nullable(),
  /** A sentence when the run failed or when there was nothing to plan. */
  message: z.string().nullable(),
  /** The confidence with which lines were to be on time; null: by the times as estimated. */
  protect: z.number().nullable(),
});
export type SearchState = DeepReadonly<z.infer<typeof searchState>>;

/**
 * Plan the week: improve from the present plan. When the run ends or is stopped, the best plan so far is checked
 * and stored as one step of the history. Refused (`busy`) while another run is going.
 */
export const searchStart = call(
  'search.start',
  z.strictObject({
    seconds: z.number().min(0.1).max(3600),
    seed: z.int().min(0).max(2_147_483_647),
    /** Share of plans like this in which a line shall be done by its due date; null: plan by the times as estimated. */
    protect: z.number().min(0.5).max(0.99).nullable(),
  }),
  z.strictObject({ jobId: z.string() }),
);
export const searchStop = call('search.stop', z.strictObject({ jobId: z.string() }), z.strictObject({}));
/** The run that is going or the last one; null: none since the app started. */
export const searchRead = call('search.read', z.strictObject({}), searchState.nullable());
