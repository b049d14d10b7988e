import { desc, eq, inArray, sql } from 'drizzle-orm';
import { cutPlan } from '../../core/contract/cuts.ts';
import type { CutAnswer } from '../../core/cutting/answer.ts';
import { cutAnswer } from './history-schema.ts';
import type { Db } from './rows.ts';

/** Kept in the file; what was used longest ago is forgotten. */
export const MOST_ANSWERS = 3000;

export type CutAnswersKept = ReturnType<typeof cutAnswersIn>;

/** Answers as kept in the data file. They can all be found again: they save the time, nothing refers to them. */
export const cutAnswersIn = (db: Db, most = MOST_ANSWERS) => ({
  /** Those used last. */
  newest: (limit: number): CutAnswer[] =>
    db
      .select()
      .from(cutAnswer)
      .orderBy(desc(cutAnswer.usedAt))
      .limit(limit)
      .all()
      .flatMap((stored) => asAnswer(stored) ?? []),

  get(key: string): CutAnswer | null {
    const stored = db.select().from(cutAnswer).where(eq(cutAnswer.key, key)).get();
    return stored ? asAnswer(stored) : null;
  },

  put({ key, plan, settled }: CutAnswer, usedAt: number): void {
    const values = { key, plan, settled, usedAt };
    db.insert(cutAnswer).values(values).onConflictDoUpdate({ target: cutAnswer.key, set: values }).run();
    const kept = sql`(select ${cutAnswer.key} from ${cutAnswer} order by ${cutAnswer.usedAt} desc, rowid desc limit ${most})`;
    const { total } = db
      .select({ total: sql<number>`count(*)` })
      .from(cutAnswer)
      .get() ?? { total: 0 };
    if (total > most)
      db.delete(cutAnswer)
        .where(sql`${cutAnswer.key} not in ${kept}`)
        .run();
  },

  /** They are still of use: others are forgotten first. */
  use(keys: readonly string[], usedAt: number): void {
    db.update(cutAnswer)
      .set({ usedAt })
      .where(inArray(cutAnswer.key, [...keys]))
      .run();
  },
});

/** Null for one that cannot be read: it is found again. */
function asAnswer({ key, plan, settled }: typeof cutAnswer.$inferSelect): CutAnswer | null {
  const read = cutPlan.safeParse(plan);
  return read.success ? { key, plan: read.data, settled } : null;
}
