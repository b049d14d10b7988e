import { and, desc, eq, isNull, lt, or, sql } from 'drizzle-orm';
import type { z } from 'zod';
import {
  listedPlan,
  savedPlan as planSchema,
  type ListedPlan,
  type SavedPlan,
} from '../../core/contract/plans.ts';
import type { Db } from './rows.ts';
import { savedPlan, step } from './history-schema.ts';

/** A plan that was kept or published, and the step that published it; null: it was kept by name. */
export type StoredPlan = Omit<SavedPlan, 'undone'> & { readonly stepId: number | null };

/** Published plans that are kept; older ones are forgotten, so that the file does not grow for ever. Named ones stay. */
export const KEPT_PUBLISHED = 500;

export type Plans = ReturnType<typeof plansIn>;

/** Plans kept and published, in the data file. */
export const plansIn = (db: Db) => ({
  /** @returns its id */
  add(plan: Omit<StoredPlan, 'id'>): number {
    const { id } = db.insert(savedPlan).values(plan).returning({ id: savedPlan.id }).get();
    const oldest = db
      .select({ id: savedPlan.id })
      .from(savedPlan)
      .where(eq(savedPlan.what, 'published'))
      .orderBy(desc(savedPlan.id))
      .limit(1)
      .offset(KEPT_PUBLISHED - 1)
      .get();
    if (oldest)
      db.delete(savedPlan)
        .where(and(eq(savedPlan.what, 'published'), lt(savedPlan.id, oldest.id)))
        .run();
    return id;
  },

  get: (id: number): SavedPlan | null =>
    readable(
      planSchema,
      db
        .select(whole)
        .from(savedPlan)
        .leftJoin(step, eq(step.id, savedPlan.stepId))
        .where(eq(savedPlan.id, id))
        .all(),
    )[0] ?? null,

  /** Newest first. @param before the id that the page begins behind; null: the newest */
  list: (before: number | null, limit: number): ListedPlan[] =>
    readable(
      listedPlan,
      db
        .select(listed)
        .from(savedPlan)
        .leftJoin(step, eq(step.id, savedPlan.stepId))
        .where(before === null ? undefined : lt(savedPlan.id, before))
        .orderBy(desc(savedPlan.id))
        .limit(limit)
        .all(),
    ),

  /** The newest published plans that were not undone, newest first. */
  published: (limit: number): SavedPlan[] =>
    readable(
      planSchema,
      db
        .select(whole)
        .from(savedPlan)
        .leftJoin(step, eq(step.id, savedPlan.stepId))
        .where(and(eq(savedPlan.what, 'published'), or(isNull(step.undone), eq(step.undone, false))))
        .orderBy(desc(savedPlan.id))
        .limit(limit)
        .all(),
    ),
});

const listed = {
  id: savedPlan.id,
  name: savedPlan.name,
  what: savedPlan.what,
  at: savedPlan.at,
  by: savedPlan.by,
  figures: savedPlan.figures,
  undone: sql`coalesce(${step.undone}, 0)`.mapWith(Boolean),
};
const whole = { ...listed, queues: savedPlan.queues, pins: savedPlan.pins };

/** Rows as the app wrote them; one that was damaged since is left out. */
const readable = <S extends z.ZodType>(schema: S, rows: readonly unknown[]): z.output<S>[] =>
  rows.flatMap((row) => {
    const read = schema.safeParse(row);
    return read.success ? [read.data] : [];
  });
