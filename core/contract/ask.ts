import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { promised, repairPlan, rushWay, why } from '../planning/answers.ts';
import { outage } from '../shop/outage.ts';
import { lineId, orderLine, workOrder } from '../shop/order.ts';
import { call, type OutputOf } from './call.ts';

/** Questions about the plan as it stands. Nothing is stored by asking; an answer is taken with `plan.replace`. */

export const askWhy = call('ask.why', z.strictObject({ lineId }), why);

/** Where a longer question stands. Every message names its run, so that a stale one can be ignored. */
export const askState = z.strictObject({
  jobId: z.string(),
  phase: z.enum(['running', 'finished', 'stopped', 'failed']),
  seconds: z.number(),
  budgetSeconds: z.number(),
  /** The best so far: of a rush, everything re-planned; of a breakdown, the repair. */
  way: rushWay.nullable(),
  repair: repairPlan.nullable(),
  /** A sentence when it failed. */
  message: z.string().nullable(),
});
export type AskState = DeepReadonly<z.infer<typeof askState>>;

const search = {
  seconds: z.number().min(0.1).max(600),
  seed: z.int().min(0).max(2_147_483_647),
};
const lines = z.array(lineId).min(1).max(500);

/** The two quick ways to take rush lines in; the third, everything re-planned, follows under the run's name. */
export const askRush = call(
  'ask.rush',
  z.strictObject({ lineIds: lines, ...search }),
  z.strictObject({ jobId: z.string(), ways: z.array(rushWay) }),
);

/**
 * After hours out of service, of a machine or of people, were saved: the order as it was, beside the repair that
 * disturbs least, which follows under the run's name.
 */
export const askRepair = call(
  'ask.repair',
  z.strictObject({ outage, ...search }),
  z.strictObject({ jobId: z.string(), lateBefore: z.array(lineId) }),
);
export const askStop = call('ask.stop', z.strictObject({ jobId: z.string() }), z.strictObject({}));
/** The longer question that is going or the last one; null when it is not the one named. */
export const askRead = call('ask.read', z.strictObject({ jobId: z.string() }), askState.nullable());

const jobId = z.string().min(1).max(60);
/**
 * Per line of an order as typed: the earliest end that makes nothing else late, and what earlier ones would cost. The
 * asker names the run, so that it can be stopped when more was typed.
 */
export const askPromise = call(
  'ask.promise',
  z.strictObject({ order: workOrder, lines: z.array(orderLine).min(1).max(500), jobId }),
  z.strictObject({
    lines: z.array(promised),
  }),
);
export type PromiseAnswer = OutputOf<typeof askPromise>;
