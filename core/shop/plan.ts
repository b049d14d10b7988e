import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, durationS, instantS, note, revision } from '../fields.ts';
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
export type Queue = DeepReadonly<z.infer<typeof queue>>;

/**
 * What a machine's floor screen and paper follow where the shop publishes plans by hand (`settings.publishing`): its
 * queue as it was published. Without a row nothing was published for it (core/planning/followed-plan.ts).
 */
export const published = z.strictObject({
  /** The machine's id. */
  id: code,
  operations: z.array(operationId),
  revision,
});
export type Published = DeepReadonly<z.infer<typeof published>>;

/** An operation the planner fixed: the search keeps it on its machine and keeps its rank in the queue. */
export const pin = z.strictObject({ id: operationId, revision });
export type Pin = DeepReadonly<z.infer<typeof pin>>;

/** A changeover under way on a machine, as the floor began it; it is over when work starts there. */
export const changeover = z.strictObject({
  /** The machine's id: one changeover a machine. */
  id: code,
  /** What it is set up for. */
  operation: operationId,
  since: instantS,
  revision,
});

/** A person, as they write themselves. A semicolon parts names in files. */
export const personName = z
  .string()
  .trim()
  .min(1, 'must not be empty')
  .max(60, 'at most 60 characters')
  .regex(/^[^;]*$/, 'must not hold a semicolon');

/** Work on an operation stood still; `to` null while it still does. Set aside, the operation left its machine to others. */
export const pause = z.strictObject({
  from: instantS,
  to: instantS.nullable(),
  reason: note,
  suspended: z.literal(true).optional(),
});
export type Pause = DeepReadonly<z.infer<typeof pause>>;

/** What happened to an operation on the floor; `end` null while it runs. */
export const operationRecord = z.strictObject({
  /** The operation's id. */
  id: operationId,
  machineId: code,
  partId: code,
  materialId: code,
  gauge: z.string(),
  colourId: code,
  lengthMm: z.number(),
  /** Pieces it was to make: the line's, less those scrapped on a step before. */
  quantity: z.int().min(1),
  good: z.int().min(0),
  scrapped: z.int().min(0),
  start: instantS,
  end: instantS.nullable(),
  /** Who ran it, in the order they came; empty unless the shop asks (`settings.askWho`) and someone answered. */
  who: z.array(personName).max(20),
  /** What the changeover before it took, as recorded on the floor; null: not recorded. */
  changeoverSeconds: durationS.nullable(),
  /** Ascending and disjoint, between start and end. */
  pauses: z.array(pause),
  /** What the standards said when it was planned, changeover left out. */
  estimatedSeconds: z.int().min(0),
  revision,
});
export type OperationRecord = DeepReadonly<z.infer<typeof operationRecord>>;
