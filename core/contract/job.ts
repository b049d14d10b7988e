import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';

/** Names one job of a solver. Every message about it carries the name, so that a stale one can be ignored. */
const jobId = z.string().min(1).max(60);

/** The job that is meant. */
export const jobNamed = z.strictObject({ jobId });

/** What is told of every job. */
export const jobFields = {
  jobId,
  phase: z.enum(['running', 'finished', 'stopped', 'failed']),
  /** Since it began, and how many it may take. */
  seconds: z.number(),
  budgetSeconds: z.number(),
  /** A sentence when it failed, or when there is more to say of how it ended. */
  message: z.string().nullable(),
};
export type JobState = DeepReadonly<z.infer<z.ZodObject<typeof jobFields>>>;
