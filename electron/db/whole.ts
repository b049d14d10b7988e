import Database from 'better-sqlite3';
import { getTableColumns, sql } from 'drizzle-orm';
import { drizzle, type BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
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
  'since',
]);

export const columnsOf = (table: TableName): string[] => Object.keys(getTableColumns(all[table]));

/** The data file table by table, unchecked: for a copy of everything. */
export const wholeIn = (db: BetterSQLite3Database) => ({
  /** So many rows at a time, as they were first written. */
  *pages(table: TableName, size: number): Generator<TableRows[]> {
    const columns = { ...getTableColumns(all[table]), rowid: sql<number>`rowid` };
    for (let after = -1; ;) {
      const page = db
        .select(columns)
        .from(all[table])
        .where(sql`rowid > ${after}`)
        .orderBy(sql`rowid`)
        .limit(size)
        .all();
      const last = page.at(-1);
      if (!last) return;
      after = last.rowid;
      yield page.map(({ rowid: _rowid, ...row }) => row);
    }
  },

  /** Add rows as they are; ids that the file counts itself go on after the highest. */
  put(table: TableName, rows: readonly TableRows[]): void {
    const values = Object.fromEntries(columnsOf(table).map((name) => [name, sql.placeholder(name)]));
    const insert = db
      .insert(all[table])
      .values(values as never)
      .prepare();
    for (const row of rows) insert.run(row);
  },
});

/** Look through a backup, table by table. */
export async function lookThrough<T>(file: string, look: (whole: Whole) => Promise<T>): Promise<T> {
  const copy = new Database(file, { readonly: true, fileMustExist: true });
  try {
    return await look(wholeIn(drizzle(copy)));
  } finally {
    copy.close();
  }
}
