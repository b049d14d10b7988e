import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { frozenInTheWay, promised, repairPlans, rushWay, why } from '../planning/answers.ts';
import { outage } from '../shop/outage.ts';
import { lineId, orderLine, workOrder } from '../shop/order.ts';
import { call, type OutputOf } from './call.ts';
import { jobFields, jobNamed } from './job.ts';

/** Questions about the plan as it is. Nothing is stored by asking; an answer is taken with `plan.replace`. */

export const askWhy = call('ask.why', z.strictObject({ lineId }), why);

/** Where a longer question stands. */
export const askState = z.strictObject({
  ...jobFields,
  /** The best so far: of a rush, everything re-planned; of a breakdown, the two repairs. */
  way: rushWay.nullable(),
  repair: repairPlans.nullable(),
});
export type AskState = DeepReadonly<z.infer<typeof askState>>;

const search = {
  seconds: z.number().min(0.1).max(600),
  seed: z.int().min(0).max(2_147_483_647),
};
/** More moves than this are no few. */
export const MOST_MOVES = 500;
const lines = z.array(lineId).min(1).max(500);

/**
 * The two quick ways to take rush lines in, outside the frozen window or (`intoFrozen`) within it too; the third,
 * everything re-planned, follows under the job's name.
 */
export const askRush = call(
  'ask.rush',
  z.strictObject({ lineIds: lines, intoFrozen: z.boolean(), ...search }),
  jobNamed.extend({ ways: z.array(rushWay), frozen: frozenInTheWay.nullable() }),
);

/**
 * After hours out of service, of a machine or of people, were saved: the order as it was; a repair of at most so many
 * moved operations and the best one follow under the job's name.
 */
export const askRepair = call(
  'ask.repair',
  z.strictObject({ outage, most: z.int().min(1).max(MOST_MOVES), ...search }),
  jobNamed.extend({ lateBefore: z.array(lineId) }),
);
export const askStop = call('ask.stop', jobNamed, z.strictObject({}));
/** The longer question that is going or the last one; null when it is not the one named. */
export const askRead = call('ask.read', jobNamed, askState.nullable());

/**
 * Per line of an order as typed: the earliest end that makes nothing else late, and what earlier ones would cost. The
 * asker names the job, so that it can be stopped when more was typed.
 */
export const askPromise = call(
  'ask.promise',
  z.strictObject({ order: workOrder, lines: z.array(orderLine).min(1).max(500), ...jobNamed.shape }),
  z.strictObject({
    lines: z.array(promised),
  }),
);
export type PromiseAnswer = OutputOf<typeof askPromise>;
