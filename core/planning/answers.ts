import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code } from '../fields.ts';
import type { CauseKind } from '../schedule/explain/causes.ts';
import { lineId, operationId } from '../shop/order.ts';

/** Answers to questions about the plan as it is, as screens and command line read them: order only, no times. */

const queues = z.record(z.string(), z.array(operationId));

/** A line that ends at another time; instants and seconds late. */
const lineShift = z.strictObject({
  job: lineId,
  before: z.number(),
  after: z.number(),
  lateBefore: z.number(),
  lateAfter: z.number(),
});

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
  'held-elsewhere',
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
  held: z.array(z.strictObject({ thing: z.string(), machine: code, until: z.number() })),
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
  /** The deliveries that its metal comes by, where that is what its release waits for; the soonest first. */
  awaited: z.array(
    z.strictObject({ deliveryId: code, sheetId: code, due: z.number(), sheets: z.int().min(0) }),
  ),
  changes: z.array(change),
});
export type Why = DeepReadonly<z.infer<typeof why>>;

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

/** What the frozen window holds in front of a rush, and how soon the rush would be ready at the front without it. */
export const frozenInTheWay = z.strictObject({
  hours: z.number(),
  operations: z.int(),
  ready: z.number(),
  late: z.number(),
});
export type FrozenInTheWay = DeepReadonly<z.infer<typeof frozenInTheWay>>;

/** A plan after a breakdown, beside the published order with its times shifted. */
const repairPlan = z.strictObject({
  queues,
  objective: z.number(),
  movedOperations: z.int(),
  late: z.array(lineId),
  madeLate: z.array(lineId),
  saved: z.array(lineId),
});

/** The two ways to repair a plan so far: with a limited number of moves, and with any. */
export const repairPlans = z.strictObject({ few: repairPlan, best: repairPlan });
export type RepairPlans = DeepReadonly<z.infer<typeof repairPlans>>;

const offer = z.strictObject({ end: z.number(), makesLate: z.array(lineShift) });

/** The dates a line of an order as typed can be promised. */
export const promised = z.strictObject({
  lineId,
  /** The earliest end that makes nothing else late, with the plan that takes the line in. */
  safe: offer.extend({ queues }).nullable(),
  earlier: z.array(offer),
  /** Why this line cannot be planned; null when it can. */
  message: z.string().nullable(),
});
export type Promised = DeepReadonly<z.infer<typeof promised>>;
