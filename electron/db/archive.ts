import { inArray, sql, type SQL } from 'drizzle-orm';
import { STAGES } from '../../core/part/stage.ts';
import { operationIdOf } from '../../core/shop/order.ts';
import type { ArchivedOrder, ArchivePage } from '../../core/contract/archive.ts';
import { fact } from './history-schema.ts';
import { rowsIn, type Db } from './rows.ts';
import { tables } from './schema.ts';

export type Archive = ReturnType<typeof archiveIn>;

/** Orders closed long enough ago, as the data file holds them beside the living ones. */
export const archiveIn = (db: Db) => {
  const rows = rowsIn(db);
  return {
    /**
     * A page, the newest closed first.
     * @param closedUntil epoch seconds: what was closed later is not in the archive
     */
    search(text: string, closedUntil: number, before: ArchivePage['before'], limit: number): ArchivePage {
      const { order } = tables;
      const older = before
        ? sql`(${order.closedAt}, ${order.id}) < (${before.closedAt}, ${before.id})`
        : sql`true`;
      const page = sql`select ${order.id} from ${order}
        where ${order.closedAt} <= ${closedUntil} and ${older} and ${speaksOf(text)}
        order by ${order.closedAt} desc, ${order.id} desc limit ${limit + 1}`;
      const found = rows
        .read('order', sql`${order.id} in (${page})`)
        .sort((a, b) => (b.closedAt ?? 0) - (a.closedAt ?? 0) || (a.id < b.id ? 1 : -1));
      const orders = found.slice(0, limit);
      const sizes = sizesOf(
        db,
        orders.map(({ id }) => id),
      );
      const last = found.length > limit ? orders.at(-1) : undefined;
      return {
        orders: orders.map((one) => ({ order: one, ...(sizes.get(one.id) ?? { lines: 0, pieces: 0 }) })),
        before: last ? { closedAt: last.closedAt ?? 0, id: last.id } : null,
      };
    },

    /** Customers of orders of any age: who ordered last first. Nobody at the counter. */
    customers(limit: number): string[] {
      const { id, customer, due } = tables.order;
      const found = db
        .select({ customer })
        .from(tables.order)
        .where(sql`${id} not glob 'walk-in-*'`)
        .groupBy(customer)
        .orderBy(sql`max(${due}) desc`, customer)
        .limit(limit)
        .all();
      return found.map((row) => row.customer);
    },

    /** An order of any age with all that is known of it; null when there is none of that number. */
    order(orderId: string): ArchivedOrder | null {
      const order = rows.get('order', orderId);
      if (!order) return null;
      const { line, record } = tables;
      const lines = rows.read('line', sql`${line.orderId} = ${orderId}`);
      const operations = lines.flatMap(({ id }) => STAGES.map((at) => operationIdOf(id, at)));
      if (operations.length === 0) return { order, lines, records: [], reported: [] };
      const records = rows.read('record', inArray(record.id, operations));
      const { id, at, label, by, reason, operation } = fact;
      const reported = db
        .select({ id, at, label, by, reason })
        .from(fact)
        .where(inArray(operation, operations))
        .orderBy(id)
        .all();
      return { order, lines, records: records.sort((a, b) => a.start - b.start), reported };
    },
  };
};

/** The order's number, its customer, or a part of its lines has the text in it. */
function speaksOf(text: string): SQL {
  const { order, line, part } = tables;
  if (text === '') return sql`true`;
  const like = `%${text.replaceAll(/[\\%_]/g, '\\$&')}%`;
  const says = (column: unknown) => sql`${column} like ${like} escape '\\'`;
  return sql`(${says(order.id)} or ${says(order.customer)} or exists (
    select 1 from ${line} join ${part} on ${part.id} = ${line.partId}
    where ${line.orderId} = ${order.id} and (${says(part.id)} or ${says(part.name)})))`;
}

/** By order: how many lines, and how many pieces they asked for. */
function sizesOf(db: Db, orders: readonly string[]): Map<string, { lines: number; pieces: number }> {
  const { orderId, quantity } = tables.line;
  if (orders.length === 0) return new Map();
  const sizes = db
    .select({ orderId, lines: sql<number>`count(*)`, pieces: sql<number>`sum(${quantity})` })
    .from(tables.line)
    .where(inArray(orderId, [...orders]))
    .groupBy(orderId)
    .all();
  return new Map(sizes.map(({ orderId: id, ...size }) => [id, size]));
}
