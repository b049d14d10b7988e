import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import type { CauseKind } from '../schedule/explain/causes.ts';
import { code } from '../fields.ts';
import { outage } from '../shop/outage.ts';
import { lineId, operationId, orderLine, workOrder } from '../shop/order.ts';
import { call, type OutputOf } from './call.ts';

/** Questions about the plan as it stands. Nothing is stored by asking; an answer is taken with `plan.replace`. */

const queues = z.record(z.string(), z.array(operationId));

/** A line that ends at another time; instants and seconds late. */
export const lineShift = z.strictObject({
  job: lineId,
  before: z.number(),
  after: z.number(),
  lateBefore: z.number(),
  lateAfter: z.number(),
});
export type LineShift = DeepReadonly<z.infer<typeof lineShift>>;

const causeKinds = [
  'release',
  'work',
  'changeover',
  'closed',
  'waiting-for-machine',
  'pinned-or-frozen',
  'queue-choice',
  'idle-for-release',
  'waiting-for-step-before',
  'crew',
] as const satisfies readonly CauseKind[];

const cause = z.strictObject({
  kind: z.enum(causeKinds),
  from: z.number(),
  to: z.number(),
  seconds: z.number(),
  operation: operationId.nullable(),
  machine: code.nullable(),
  blockedBy: z.array(operationId),
});

const change = z.strictObject({
  kind: z.enum(['earlier-position', 'other-machine', 'swap', 'overtime']),
  moves: z.array(z.strictObject({ operation: operationId, machine: code, position: z.int() })),
  overtime: z.strictObject({ machine: code, from: z.number(), seconds: z.number() }).nullable(),
  queues,
  end: z.number(),
  late: z.number(),
  later: z.array(lineShift),
  earlier: z.array(lineShift),
  objectiveAdded: z.number(),
});
export type PlanChange = DeepReadonly<z.infer<typeof change>>;

/** Why a line ends when it does; for a late one, single changes that help, the best first. */
export const why = z.strictObject({
  job: lineId,
  end: z.number(),
  due: z.number().nullable(),
  late: z.number(),
  causes: z.array(cause),
  changes: z.array(change),
});
export type Why = DeepReadonly<z.infer<typeof why>>;
export const askWhy = call('ask.why', z.strictObject({ lineId }), why);

/** A way to take rush lines in, weighed against the plan without them. */
export const rushWay = z.strictObject({
  way: z.enum(['front', 'run', 'replan']),
  queues,
  ready: z.number(),
  /** Seconds by which the worst of the rush lines ends after its due date; 0 on time. */
  late: z.number(),
  changeoverSecondsAdded: z.number(),
  changeoversAdded: z.number(),
  later: z.array(lineShift),
  earlier: z.array(lineShift),
  objectiveAdded: z.number(),
});
export type RushWay = DeepReadonly<z.infer<typeof rushWay>>;

/** A plan after a breakdown, beside the published order with its times shifted. */
export const repairPlan = z.strictObject({
  reach: z.enum(['published', 'near', 'whole']),
  queues,
  objective: z.number(),
  movedOperations: z.int(),
  late: z.array(lineId),
  madeLate: z.array(lineId),
  saved: z.array(lineId),
});
export type RepairPlan = DeepReadonly<z.infer<typeof repairPlan>>;

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
const offer = z.strictObject({ end: z.number(), makesLate: z.array(lineShift) });

/**
 * Per line of an order as typed: the earliest end that makes nothing else late, and what earlier ones would cost. The
 * asker names the run, so that it can be stopped when more was typed.
 */
export const askPromise = call(
  'ask.promise',
  z.strictObject({ order: workOrder, lines: z.array(orderLine).min(1).max(500), jobId }),
  z.strictObject({
    lines: z.array(
      z.strictObject({
        lineId,
        /** With the plan that takes the line in. */
        safe: offer.extend({ queues }).nullable(),
        earlier: z.array(offer),
        /** Why this line cannot be planned; null when it can. */
        message: z.string().nullable(),
      }),
    ),
  }),
);
export type PromiseAnswer = OutputOf<typeof askPromise>;
