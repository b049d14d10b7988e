import { count, eq, getTableColumns, sql, type SQL } from 'drizzle-orm';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type { SQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import { byId } from '../../core/shop/row-change.ts';
import { rowKinds, type RowKind, type RowOf } from '../../core/shop/state.ts';
import { Refused } from '../refused.ts';
import { tables } from './schema.ts';

export type Db = BetterSQLite3Database;
export type Rows = ReturnType<typeof rowsIn>;

type AnyTable = SQLiteTable & { readonly id: SQLiteColumn };
const tableOf = (kind: RowKind): AnyTable => tables[kind];

/** Every row kind's repository: one table each, a row checked by its noun's schema on its way out. */
export const rowsIn = (db: Db) => {
  const prepared = new Map<RowKind, ReturnType<typeof statements>>();
  const of = (kind: RowKind) => {
    const known = prepared.get(kind) ?? statements(db, kind);
    prepared.set(kind, known);
    return known;
  };
  /** All rows of a kind (or those that `where` picks), in the order people count their ids. @throws Refused on a damaged row */
  const read = <K extends RowKind>(kind: K, where?: SQL): RowOf<K>[] => {
    const stored = db.select().from(tableOf(kind)).where(where).all();
    return stored.map((row) => checked(kind, row)).sort(byId);
  };
  return {
    read,

    get<K extends RowKind>(kind: K, id: string): RowOf<K> | null {
      const stored = of(kind).get.get({ id });
      return stored ? checked(kind, stored) : null;
    },

    /** Add the row, or write it over the one with its id. */
    put<K extends RowKind>(kind: K, row: RowOf<K>): void {
      of(kind).put.run(row);
    },

    remove(kind: RowKind, id: string): void {
      of(kind).remove.run({ id });
    },

    /**
     * Records of operations whose line is still open or that are still under way, and what each machine finished last,
     * which says since when it has been free.
     */
    presentRecords(): RowOf<'record'>[] {
      const { id, machineId, end } = tables.record;
      const lineId = sql`substr(${id}, 1, instr(${id}, ':') - 1)`;
      // SQLite takes the other columns from the row that holds the maximum.
      const newest = sql`select id from (select ${id} as id, max(${end}) from ${tables.record} where ${end} is not null group by ${machineId})`;
      return read(
        'record',
        sql`${lineId} in (select ${tables.line.id} from ${tables.line} where ${tables.line.status} = 'open') or ${end} is null or ${id} in (${newest})`,
      );
    },

    /** The newest entries of the stock's history. */
    newestMovements(limit: number): RowOf<'movement'>[] {
      const { id, at } = tables.movement;
      return read(
        'movement',
        sql`${id} in (select ${id} from ${tables.movement} order by ${at} desc, ${id} desc limit ${limit})`,
      );
    },

    /**
     * Finished operations, latest start first: `limit` of them that began before `before`, and the rest of those that
     * began in the same second as the last one, so that the next page misses none.
     */
    finishedRecords(before: number | null, limit: number): { records: RowOf<'record'>[]; total: number } {
      const { start, end } = tables.record;
      const finished = sql`${end} is not null`;
      const page = before === null ? finished : sql`${finished} and ${start} < ${before}`;
      const last = sql`(select min(s) from (select ${start} as s from ${tables.record} where ${page} order by s desc limit ${limit}))`;
      const records = read('record', sql`${page} and ${start} >= ${last}`);
      const total = db.select({ total: count() }).from(tables.record).where(finished).get()?.total ?? 0;
      return { records: records.sort((a, b) => b.start - a.start || byId(a, b)), total };
    },
  };
};

/** The statements for one row, prepared once a kind: an import writes thousands of rows. */
function statements(db: Db, kind: RowKind) {
  const table = tableOf(kind);
  const names = Object.keys(getTableColumns(table));
  const values = Object.fromEntries(names.map((name) => [name, sql.placeholder(name)]));
  const set = Object.fromEntries(names.map((name) => [name, sql`excluded.${sql.identifier(name)}`]));
  const thisRow = eq(table.id, sql.placeholder('id'));
  return {
    get: db.select().from(table).where(thisRow).prepare(),
    put: db.insert(table).values(values).onConflictDoUpdate({ target: table.id, set }).prepare(),
    remove: db.delete(table).where(thisRow).prepare(),
  };
}

function checked<K extends RowKind>(kind: K, stored: Record<string, unknown>): RowOf<K> {
  const row = rowKinds[kind].safeParse(stored);
  if (row.success) return row.data as RowOf<K>;
  const [issue] = row.error.issues;
  const field = issue?.path.join('.') || 'row';
  throw new Refused(
    'damaged',
    `The data file holds a damaged row: ${kind} "${String(stored.id)}", ${field}: ${issue?.message ?? 'unreadable'}. ` +
      'Nothing was changed. Close the app and put a backup copy of the data file in its place.',
  );
}
