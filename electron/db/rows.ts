import { count, eq, getTableColumns, sql, type SQL } from 'drizzle-orm';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type { SQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import { STAGES } from '../../core/part/stage.ts';
import { operationIdOf } from '../../core/shop/order.ts';
import { byId } from '../../core/shop/row-change.ts';
import { rowKinds, type RowKind, type RowOf } from '../../core/shop/state.ts';
import { tables } from './schema.ts';
import { setAsideIn } from './set-aside.ts';

export type Db = BetterSQLite3Database;
export type Rows = ReturnType<typeof rowsIn>;

type AnyTable = SQLiteTable & { readonly id: SQLiteColumn };
const tableOf = (kind: RowKind): AnyTable => tables[kind];

/** Every row kind's repository: one table each, a row checked by its noun's schema on its way out; one that fails is set aside. */
export const rowsIn = (db: Db) => {
  const aside = setAsideIn(db);
  /** The row as its noun; null when it could not be read, and is out of the way now. */
  const checked = <K extends RowKind>(kind: K, stored: Record<string, unknown>): RowOf<K> | null => {
    const row = rowKinds[kind].safeParse(stored);
    if (row.success) return row.data as RowOf<K>;
    const [issue] = row.error.issues;
    const reason = `${issue?.path.join('.') || 'row'}: ${issue?.message ?? 'unreadable'}`;
    return aside.take(kind, stored, reason) as RowOf<K> | null;
  };
  const prepared = new Map<RowKind, ReturnType<typeof statements>>();
  const of = (kind: RowKind) => {
    const known = prepared.get(kind) ?? statements(db, kind);
    prepared.set(kind, known);
    return known;
  };
  /** All rows of a kind (or those that `where` picks), in the order people count their ids. */
  const read = <K extends RowKind>(kind: K, where?: SQL): RowOf<K>[] => {
    const stored = db.select().from(tableOf(kind)).where(where).all();
    return stored.flatMap((row) => checked(kind, row) ?? []).sort(byId);
  };
  return {
    read,
    /** What was set aside because it could not be read. */
    aside,

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

    /** Whether any operation of a line, of an open one or one of long ago, has a record. */
    hasRecords: (lineId: string): boolean =>
      STAGES.some((at) => of('record').get.get({ id: operationIdOf(lineId, at) }) !== undefined),

    /** The highest number of a walk-in order, of one of long ago too; 0 without any. */
    lastWalkIn(): number {
      const { id } = tables.order;
      const number = sql<number>`max(cast(substr(${id}, 9) as integer))`;
      const found = db
        .select({ number })
        .from(tables.order)
        .where(sql`${id} glob 'walk-in-[0-9]*'`)
        .get();
      return found?.number ?? 0;
    },

    ...picksIn(db, read),
  };
};

type Read = <K extends RowKind>(kind: K, where?: SQL) => RowOf<K>[];

/** Rows picked by more than their kind. */
const picksIn = (db: Db, read: Read) => ({
  /**
   * Orders that are open or were closed after an instant, with their lines; the records of these orders, of lines that
   * are gone too, those still under way, and what each machine finished last, which says since when it has been free; step
   * lists for these lines.
   */
  living(closedAfter: number): {
    orders: RowOf<'order'>[];
    lines: RowOf<'line'>[];
    records: RowOf<'record'>[];
    cutLists: RowOf<'cutList'>[];
    cutCounts: RowOf<'cutCount'>[];
  } {
    const { order, line, record, cutList } = tables;
    const open = sql`${order.closedAt} is null or ${order.closedAt} > ${closedAfter}`;
    const orders = read('order', open);
    const lines = read('line', sql`${line.orderId} in (select ${order.id} from ${order} where ${open})`);
    const ids = JSON.stringify(orders.map(({ id }) => id));
    const newest = read('machine').map(({ id }) => newestRecordOf(id));
    const records = read(
      'record',
      // An order's keys stand between its number with a slash and its number with what follows a slash, a 0.
      sql`${record.id} in (select work.id from json_each(${ids}) as named join ${record} as work on work.id >= named.value || '/' and work.id < named.value || '0') or ${record.end} is null or ${record.id} in (${sql.join([...newest, sql`null`], sql`, `)})`,
    );
    const known = JSON.stringify(lines.map(({ id }) => id));
    const cutLists = read(
      'cutList',
      sql`exists (select 1 from json_each(${cutList.lines}) as named where named.value in (select value from json_each(${known})))`,
    );
    const lists = JSON.stringify(cutLists.map(({ id }) => id));
    const { cutCount } = tables;
    const cutCounts = read('cutCount', sql`${cutCount.listId} in (select value from json_each(${lists}))`);
    return { orders, lines, records, cutLists, cutCounts };
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
});

/** What a machine finished last. */
const newestRecordOf = (machineId: string): SQL => {
  const { id, machineId: on, end } = tables.record;
  return sql`(select ${id} from ${tables.record} where ${on} = ${machineId} and ${end} is not null order by ${end} desc limit 1)`;
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
