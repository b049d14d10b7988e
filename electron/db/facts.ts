import { desc, eq } from 'drizzle-orm';
import type { Command } from '../../core/edit/command.ts';
import type { RowChange } from '../../core/shop/row-change.ts';
import type { Db } from './rows.ts';
import { fact } from './history-schema.ts';

/** What was reported, and what it changed. Nothing is ever taken out of this log. */
export interface Fact {
  readonly id: number;
  /** When it happened, and when it was written down; epoch seconds. */
  readonly at: number;
  readonly keptAt: number;
  readonly command: Command;
  readonly label: string;
  readonly operation: string | null;
  readonly machineId: string | null;
  readonly by: string;
  /** The entry that this one corrects; null: none. */
  readonly corrects: number | null;
  /** Why it was corrected, or why work stood still; empty: no reason was given or asked for. */
  readonly reason: string;
  readonly changes: readonly RowChange[];
}

export type Facts = ReturnType<typeof factsIn>;

/** The floor's log as kept in the data file: entries are only added. */
export const factsIn = (db: Db) => ({
  /** @returns its id */
  add: (entry: Omit<Fact, 'id'>): number => db.insert(fact).values(entry).returning({ id: fact.id }).get().id,

  get: (id: number): Fact | null => asFact(db.select().from(fact).where(eq(fact.id, id)).get()),

  /** What was reported of an operation, newest first. */
  ofOperation: (operation: string): Fact[] =>
    db
      .select()
      .from(fact)
      .where(eq(fact.operation, operation))
      .orderBy(desc(fact.id))
      .all()
      .map((stored) => asFact(stored)!),

  /** The entry that corrected this one; null: none did. */
  correctionOf: (id: number): Fact | null =>
    asFact(db.select().from(fact).where(eq(fact.corrects, id)).get()),
});

/** The app alone writes these columns. */
const asFact = (stored: typeof fact.$inferSelect | undefined): Fact | null =>
  stored ? { ...stored, command: stored.command as Command, changes: stored.changes as RowChange[] } : null;
