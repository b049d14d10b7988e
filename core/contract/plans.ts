import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { MOST_OF_A_NAME, seen } from '../edit/command.ts';
import { keptPlan, planSum } from '../shop/kept-plan.ts';
import { call } from './call.ts';
import { editApply } from './edit.ts';

/** A plan that was kept by name, or published, as the list shows it. */
const listedFields = {
  id: z.int(),
  /** Its name, or what was noted as it was published; may be empty then. */
  name: z.string(),
  what: z.enum(['published', 'named']),
  at: z.int(),
  by: z.string(),
  figures: keptPlan.figures,
  /** Publishing it was undone. */
  undone: z.boolean(),
};
export const listedPlan = z.strictObject(listedFields);
export type ListedPlan = DeepReadonly<z.infer<typeof listedPlan>>;

export const savedPlan = z.strictObject({ ...listedFields, ...keptPlan });
export type SavedPlan = DeepReadonly<z.infer<typeof savedPlan>>;

const planNamed = z.strictObject({ id: z.int() });
const most = z.int().min(1).max(200);

/** Plans kept and published, newest first. */
export const plansList = call(
  'plans.list',
  z.strictObject({
    /** The plan that the page begins behind; null: the newest. */
    before: z.int().nullable(),
    limit: most,
  }),
  z.strictObject({ plans: z.array(listedPlan), more: z.boolean() }),
);

export const plansRead = call('plans.read', planNamed, savedPlan);

/** The plan that floor and paper follow, and the one they followed before; null where nothing was published by hand. */
export const plansPublished = call(
  'plans.published',
  z.strictObject({}),
  z.strictObject({ last: listedPlan.nullable(), before: savedPlan.nullable() }),
);

/** Keep the plan as it stands, under a name. */
export const plansKeep = call(
  'plans.keep',
  z.strictObject({ name: z.string().trim().min(1, 'must not be empty').max(MOST_OF_A_NAME) }),
  planNamed,
);

/** The plan becomes a kept one, as one step of the history; refused where someone changed a queue since it was seen. */
export const plansGoBack = call('plans.goBack', planNamed.extend({ seen }), editApply.output);

/** A kept plan by its id, the one on the board, or the one that floor and paper follow. */
const whichPlan = z.union([z.int(), z.enum(['draft', 'published'])]);
export type WhichPlan = z.infer<typeof whichPlan>;

const lineMove = z.strictObject({ lineId: z.string(), before: z.int(), after: z.int(), due: z.int() });

/** Two plans side by side, both as they would be worked from now on. */
export const plansCompare = call(
  'plans.compare',
  z.strictObject({ a: whichPlan, b: whichPlan }),
  z.strictObject({
    before: planSum,
    after: planSum,
    earlier: z.array(lineMove),
    later: z.array(lineMove),
    newlyLate: z.array(lineMove),
    noLongerLate: z.array(lineMove),
    otherMachine: z.array(z.strictObject({ operation: z.string(), from: z.string(), to: z.string() })),
  }),
);

const doneFields = { id: z.int(), /** When it was written down. */ at: z.int(), by: z.string() };

/** One thing that was done: a step of the plan, a report from the floor, or a plan that was kept or published. */
const doneEntry = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('step'), ...doneFields, label: z.string(), undone: z.boolean() }),
  z.strictObject({
    is: z.literal('fact'),
    ...doneFields,
    label: z.string(),
    /** When it happened. */
    happened: z.int(),
    /** Why it corrects an earlier one; empty: it corrects none. */
    reason: z.string(),
    /** What it was reported of; null: not of an operation. */
    operation: z.string().nullable(),
    /** The later entry that corrected it or took it back; null: none did. */
    putRight: z.strictObject({ label: z.string(), at: z.int() }).nullable(),
  }),
  z.strictObject({ is: z.literal('plan'), ...listedFields }),
]);
export type DoneEntry = DeepReadonly<z.infer<typeof doneEntry>>;

/** The oldest of each kind that were read already. */
const doneBefore = z.strictObject({ step: z.int(), fact: z.int(), plan: z.int() });
export type DoneBefore = DeepReadonly<z.infer<typeof doneBefore>>;

/** What was done by whom and when, newest first, floor and desk together. */
export const historyRead = call(
  'history.read',
  z.strictObject({ before: doneBefore.nullable(), limit: most }),
  z.strictObject({
    entries: z.array(doneEntry),
    /** Where the next page begins; null: there is none. */
    next: doneBefore.nullable(),
  }),
);
