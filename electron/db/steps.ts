import { and, asc, desc, eq, lt } from 'drizzle-orm';
import type { RowChange } from '../../core/shop/row-change.ts';
import { step } from './history-schema.ts';
import type { Db } from './rows.ts';

/** One thing the planner did: its name and what it changed. `undone` steps wait to be redone. */
export interface Step {
  readonly id: number;
  readonly label: string;
  readonly at: number;
  readonly changes: readonly RowChange[];
  readonly undone: boolean;
  /** Whose step it is. */
  readonly by: string;
}

/** Steps kept for undo; older ones are forgotten, so that the file does not grow for ever. */
export const KEPT_STEPS = 500;
const LISTED_STEPS = 50;

export type Steps = ReturnType<typeof stepsIn>;

/** The history as kept in the data file. */
export const stepsIn = (db: Db) => ({
  /** A new step; what its caller undid before it can no longer be redone. @returns its id */
  add(label: string, at: number, changes: readonly RowChange[], by: string): number {
    db.delete(step)
      .where(and(eq(step.undone, true), eq(step.by, by)))
      .run();
    const { id } = db
      .insert(step)
      .values({ label, at, changes, undone: false, by })
      .returning({ id: step.id })
      .get();
    db.delete(step)
      .where(lt(step.id, id - KEPT_STEPS + 1))
      .run();
    return id;
  },

  get: (id: number): Step | null => asStep(db.select().from(step).where(eq(step.id, id)).get()),

  /** The step of a caller that undo takes back next. */
  newest: (by: string): Step | null =>
    asStep(
      db
        .select()
        .from(step)
        .where(and(eq(step.undone, false), eq(step.by, by)))
        .orderBy(desc(step.id))
        .limit(1)
        .get(),
    ),

  /** The step of a caller that redo carries out again next. */
  oldestUndone: (by: string): Step | null =>
    asStep(
      db
        .select()
        .from(step)
        .where(and(eq(step.undone, true), eq(step.by, by)))
        .orderBy(asc(step.id))
        .limit(1)
        .get(),
    ),

  mark(id: number, undone: boolean): void {
    db.update(step).set({ undone }).where(eq(step.id, id)).run();
  },

  /** A caller's steps, next to be undone (or redone) first. */
  list(undone: boolean, by: string): { id: number; label: string; at: number }[] {
    return db
      .select({ id: step.id, label: step.label, at: step.at })
      .from(step)
      .where(and(eq(step.undone, undone), eq(step.by, by)))
      .orderBy(undone ? asc(step.id) : desc(step.id))
      .limit(LISTED_STEPS)
      .all();
  },
});

/** The app alone writes this column, and only from RowChange[]. */
const asStep = (stored: typeof step.$inferSelect | undefined): Step | null =>
  stored ? { ...stored, changes: stored.changes as RowChange[] } : null;
