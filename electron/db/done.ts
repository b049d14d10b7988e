import { and, desc, isNotNull, lt, notInArray, sql } from 'drizzle-orm';
import type { DoneBefore, DoneEntry } from '../../core/contract/plans.ts';
import { plansIn } from './plans.ts';
import type { Db } from './rows.ts';
import { fact, savedPlan, step } from './history-schema.ts';

/** What was decided, what was reported and which plans were kept, as one story. */
export const doneIn = (db: Db) => ({
  /** Newest first. @param before the oldest of each that were read already; null: from the newest on */
  page(before: DoneBefore | null, limit: number): DoneEntry[] {
    const last = Number.MAX_SAFE_INTEGER;
    return merged(
      [
        stepsBefore(db, before?.step ?? last, limit),
        factsBefore(db, before?.fact ?? last, limit),
        plansIn(db)
          .list(before?.plan ?? null, limit)
          .map((plan): DoneEntry => ({ is: 'plan', ...plan })),
      ],
      limit,
    );
  },
});

/** Without those that the kept plans tell of. */
function stepsBefore(db: Db, before: number, limit: number): DoneEntry[] {
  const publishing = db.select({ id: savedPlan.stepId }).from(savedPlan).where(isNotNull(savedPlan.stepId));
  return db
    .select({ id: step.id, at: step.at, by: step.by, label: step.label, undone: step.undone })
    .from(step)
    .where(and(lt(step.id, before), notInArray(step.id, publishing)))
    .orderBy(desc(step.id))
    .limit(limit)
    .all()
    .map((one) => ({ is: 'step', ...one }));
}

/** The entry that corrects this one, which is of the same operation: found by the index of those. */
const putRight = sql<string | null>`(
  select json_object('label', later.label, 'at', later."keptAt") from ${fact} as later
  where later.operation is ${fact}.operation and later.corrects = ${fact}.id limit 1
)`.mapWith((text: string) => JSON.parse(text) as { label: string; at: number });

const factsBefore = (db: Db, before: number, limit: number): DoneEntry[] =>
  db
    .select({
      ...{ id: fact.id, at: fact.keptAt, by: fact.by, label: fact.label },
      ...{ happened: fact.at, reason: fact.reason, operation: fact.operation, putRight },
    })
    .from(fact)
    .where(lt(fact.id, before))
    .orderBy(desc(fact.id))
    .limit(limit)
    .all()
    .map((one) => ({ is: 'fact', ...one }));

/** Lists that are each newest first as one; each keeps its own order, whatever the clock said. */
function merged(lists: readonly DoneEntry[][], limit: number): DoneEntry[] {
  const left = lists.map((list) => [...list]);
  const all: DoneEntry[] = [];
  while (all.length < limit) {
    const newest = left.reduce((best, list) => ((list[0]?.at ?? -1) > (best[0]?.at ?? -1) ? list : best));
    const next = newest.shift();
    if (!next) break;
    all.push(next);
  }
  return all;
}
