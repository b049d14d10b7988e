import { index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { json } from './columns.ts';

/** What the host keeps beside the shop's own rows: two histories, plans, answers, rows set aside. */

/** The history: what each step changed, so that it can be undone after a restart too. */
export const step = sqliteTable('step', {
  id: integer().primaryKey({ autoIncrement: true }),
  label: text().notNull(),
  at: integer().notNull(),
  changes: json().notNull(),
  undone: integer({ mode: 'boolean' }).notNull(),
  /** Whose step it is: the caller's own name for itself. */
  by: text().notNull().default(''),
});

/** The floor's log: what happened, as it was reported. Entries are only added; a later one may correct an earlier. */
export const fact = sqliteTable(
  'fact',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    /** When it happened, and when it was written down. */
    at: integer().notNull(),
    keptAt: integer().notNull(),
    /** The command as it was given, and what it is called. */
    command: json().notNull(),
    label: text().notNull(),
    operation: text(),
    machineId: text(),
    by: text().notNull(),
    /** The entry that this one corrects; null: none. */
    corrects: integer(),
    /** Why it was corrected, or why work stood still; empty: no reason was given or asked for. */
    reason: text().notNull(),
    changes: json().notNull(),
  },
  (table) => [index('fact_operation').on(table.operation), index('fact_at').on(table.at)],
);

/** Plans kept by name, and each that was published. */
export const savedPlan = sqliteTable('savedPlan', {
  id: integer().primaryKey({ autoIncrement: true }),
  name: text().notNull(),
  what: text().notNull(),
  at: integer().notNull(),
  by: text().notNull(),
  queues: json().notNull(),
  pins: json().notNull(),
  /** What it came to when it was kept; null: it could not be worked out. */
  figures: json(),
  /** The step of the history that published it; null: it was kept by name. */
  stepId: integer(),
});

/** The best sheets found for a run so far, by what was to be cut (core/cutting/run.ts `runKey`). */
export const cutAnswer = sqliteTable('cutAnswer', {
  key: text().primaryKey(),
  plan: json().notNull(),
  settled: integer({ mode: 'boolean' }).notNull(),
  usedAt: integer().notNull(),
});

/** Rows that could not be read, as they were found, so that the others can be worked with. */
export const setAside = sqliteTable('setAside', {
  id: integer().primaryKey({ autoIncrement: true }),
  kind: text().notNull(),
  rowId: text().notNull(),
  content: text().notNull(),
  reason: text().notNull(),
  at: integer().notNull(),
});
