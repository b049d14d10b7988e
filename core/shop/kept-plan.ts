import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { operationId } from './order.ts';

/** A plan in figures. */
export const planSum = z.strictObject({
  lateLines: z.int(),
  /** Σ over the late lines. */
  lateSeconds: z.number(),
  changeovers: z.int(),
  changeoverSeconds: z.number(),
});
export type PlanSum = DeepReadonly<z.infer<typeof planSum>>;

/** What is kept of a plan: order and pins, for a plan is only order; and what it came to then. */
export const keptPlan = {
  queues: z.record(z.string(), z.array(operationId)),
  pins: z.array(operationId),
  /** Null: it could not be worked out. */
  figures: planSum.nullable(),
};
