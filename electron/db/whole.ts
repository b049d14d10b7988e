import { count, getTableColumns } from 'drizzle-orm';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import { rowKinds, type RowKind } from '../../core/shop/state.ts';
import { cutAnswer, fact, savedPlan, setAside, step } from './history-schema.ts';
import { tables } from './schema.ts';

/** Every table of a data file, in the order in which rows can be put without breaking a reference. */
const all = {
  ...(Object.fromEntries(
    Object.keys(rowKinds).map((kind) => [kind, tables[kind as RowKind]]),
  ) as typeof tables),
  step,
  fact,
  savedPlan,
  cutAnswer,
  setAside,
};
export type TableName = keyof typeof all;
export const tableNames = Object.keys(all) as TableName[];
export type TableRows = Readonly<Record<string, unknown>>;
export type Whole = ReturnType<typeof wholeIn>;

/** Columns that hold an instant, by name: the same name means one in every table. */
export const instantColumns: ReadonlySet<string> = new Set([
  'release',
  'due',
  'closedAt',
  'start',
  'end',
  'from',
  'to',
  'at',
  'keptAt',
  'revertedAt',
  'usedAt',
  'taken',
]);

export const columnsOf = (table: TableName): string[] => Object.keys(getTableColumns(all[table]));

/** The data file table by table, unchecked: for a copy of everything. */
export const wholeIn = (db: BetterSQLite3Database) => ({
  read: (table: TableName): TableRows[] => db.select().from(all[table]).all(),

  /** Add rows as they are; ids that the file counts itself go on after the highest. */
  put(table: TableName, rows: readonly TableRows[]): void {
    for (const row of rows)
      db.insert(all[table])
        .values(row as never)
        .run();
  },

  count: (table: TableName): number => db.select({ rows: count() }).from(all[table]).get()?.rows ?? 0,
});
