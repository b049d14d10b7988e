import { z } from 'zod';
import { code, instantS, revision } from './fields.ts';
import { operationId } from './order.ts';

/**
 * A plan is only order: per machine, the queue. Times are never stored; decode computes them.
 * Operations that no queue names yet are unplanned.
 */
export const queue = z.strictObject({
  /** The machine's id: one queue a machine. */
  id: code,
  operations: z.array(operationId),
  revision,
});
export type Queue = z.infer<typeof queue>;

/** An operation the planner fixed: the search keeps it on its machine and keeps its rank in the queue. */
export const pin = z.strictObject({ id: operationId, revision });
export type Pin = z.infer<typeof pin>;

/** What happened to an operation on the floor; `end` null while it runs. */
export const record = z.strictObject({
  /** The operation's id. */
  id: operationId,
  machineId: code,
  partId: code,
  materialId: code,
  gauge: z.string(),
  colourId: code,
  lengthMm: z.number(),
  quantity: z.int().min(1),
  good: z.int().min(0),
  scrapped: z.int().min(0),
  start: instantS,
  end: instantS.nullable(),
  /** What the standards said when it was planned, changeover left out. */
  estimatedSeconds: z.int().min(0),
  revision,
});
export type Record = z.infer<typeof record>;
