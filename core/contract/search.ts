import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { call } from './call.ts';
import { jobFields, jobNamed } from './job.ts';

/** A plan at a glance, by the due dates that customers were given (core/planning/figures.ts). */
const planGist = z.strictObject({
  lateLines: z.int(),
  lateSeconds: z.number(),
  changeoverSeconds: z.number(),
});

/** Where a search for a better plan stands. */
export const searchState = z.strictObject({
  ...jobFields,
  step: z.int(),
  evaluations: z.int(),
  objective: z.number().nullable(),
  /** Objective of the plan that it began from. */
  startObjective: z.number().nullable(),
  /** The best plan so far, and the one that it began from. */
  gist: planGist,
  startGist: planGist,
  /** Proven lower bound on the objective, where one is known. */
  bound: z.number().nullable(),
  /** Objective against time, for the convergence curve; at most 200 points. */
  curve: z.array(z.strictObject({ seconds: z.number(), objective: z.number() })),
  /** The history's step that the plan found became; null: nothing was stored. */
  stepId: z.int().nullable(),
  /** Runs joined after the search because the stock saved is worth the time it costs; null: none. */
  joins: z.strictObject({ count: z.int(), savedCents: z.number() }).nullable(),
  /** The confidence with which lines were to be on time; null: by the times as estimated. */
  protect: z.number().nullable(),
});
export type SearchState = DeepReadonly<z.infer<typeof searchState>>;

/**
 * Plan the week: improve from the present plan. When the search ends or is stopped, the best plan so far is checked
 * and stored as one step of the history. Refused (`busy`) while another search is going.
 */
export const searchStart = call(
  'search.start',
  z.strictObject({
    seconds: z.number().min(0.1).max(3600),
    seed: z.int().min(0).max(2_147_483_647),
    /** Share of plans like this in which a line shall be done by its due date; null: plan by the times as estimated. */
    protect: z.number().min(0.5).max(0.99).nullable(),
  }),
  jobNamed,
);
export const searchStop = call('search.stop', jobNamed, z.strictObject({}));
/** The search that is going or the last one; null: none since the app started. */
export const searchRead = call('search.read', z.strictObject({}), searchState.nullable());
