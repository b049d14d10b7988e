import { z } from 'zod';
import { code, instantS, name } from '../fields.ts';
import { orderLine, workOrder } from '../shop/order.ts';
import { operationRecord } from '../shop/plan.ts';
import { call, type OutputOf } from './call.ts';

/** Orders that were done or cancelled some days ago. They are read here only, page by page, and nothing is changed. */

/** An order as a list shows it. */
const archived = z.strictObject({
  order: workOrder,
  lines: z.int(),
  pieces: z.int(),
});

/** Where a page ended: the next begins after it. */
const after = z.strictObject({ closedAt: instantS, id: code });

/** The newest closed first. @param text in the number, the customer, or a line's part by code or name; empty: all */
export const archiveSearch = call(
  'archive.search',
  z.strictObject({
    text: z.string().max(120),
    before: after.nullable(),
    limit: z.int().min(1).max(200),
  }),
  z.strictObject({
    orders: z.array(archived),
    /** For the next page; null: there is none. */
    before: after.nullable(),
  }),
);
export type ArchivePage = OutputOf<typeof archiveSearch>;

/** Names of customers, of all orders that the data file holds: those who ordered last, the last one first. */
export const archiveCustomers = call(
  'archive.customers',
  z.strictObject({}),
  z.strictObject({ names: z.array(name) }),
);

/** An entry of the floor's log. */
const reported = z.strictObject({
  id: z.int(),
  at: z.int(),
  label: z.string(),
  by: z.string(),
  reason: z.string(),
});

/** One order with its lines, what was recorded of them, and what the floor reported, the oldest first. */
export const archiveOrder = call(
  'archive.order',
  z.strictObject({ orderId: code }),
  z.strictObject({
    order: workOrder,
    lines: z.array(orderLine),
    records: z.array(operationRecord),
    reported: z.array(reported),
  }),
);
export type ArchivedOrder = OutputOf<typeof archiveOrder>;
