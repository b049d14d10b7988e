import type { CellIssue, RowFindings } from './file-check.ts';
import { formatClock, wallParts } from '../time/wall.ts';
import { instant, type Instant } from '../units/brand.ts';
import { readOrderHeader, type OrderColumn } from './order-columns.ts';
import { placeLines } from './order-match.ts';
import { readOrderRow, type OwnFields, type ReadRow, type Refuse } from './order-row.ts';
import { type OrderLine, startsBeforeDue, usualOrder, type WorkOrder } from '../shop/order.ts';
import { quoted } from '../quoted.ts';
import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';

export interface FileRow {
  /** As counted in the file; the header is row 1. */
  readonly row: number;
  /** Texts in the header's order. */
  readonly cells: readonly string[];
}

export interface CheckedRows extends RowFindings {
  /** New work orders and new lines of the ready rows. */
  readonly orders: WorkOrder[];
  readonly lines: OrderLine[];
}

/**
 * Check a file's rows of work-order lines against the shop. What a row says of its order (customer, release, due, importance,
 * rush, note) counts from the first row that fills it in; the order's other rows repeat it or leave it empty.
 * @param header the file's column titles; see order-columns.ts
 * @param now a due date before it is refused, unless the row stands in the shop already
 * @returns every wrong cell with its reason, and what could be taken; problems only when the header is of no use
 */
export function checkOrderRows(
  shop: Shop,
  header: readonly string[],
  rows: readonly FileRow[],
  now: Instant,
): Result<CheckedRows> {
  const columns = readOrderHeader(header);
  if (!columns.ok) return columns;
  const { at, unused } = columns.value;
  const issues: CellIssue[] = [];
  const cellsOf = new Map(rows.map(({ row, cells }) => [row, cells]));
  const refuse: Refuse = (row, column, reason) => {
    const index = at[column] ?? -1;
    issues.push({ row, column: header[index] ?? column, value: cellsOf.get(row)?.[index] ?? '', reason });
  };
  const read = rows.flatMap(({ row, cells }): ReadRow[] => {
    const found = readOrderRow(shop, columns.value, header.length, cells);
    for (const { column, reason } of found.refusals) refuse(row, column, reason);
    return found.row ? [{ ...found.row, row }] : [];
  });
  const places = placeLines(shop, read, refuse);
  const own = ownFieldsOf(shop, read);
  for (const row of read) {
    const agreed = own.get(row.orderId) ?? row.own;
    refuseOtherwise(shop, row, agreed, refuse);
    if (places.lines.has(row.row)) refuseForOrder(shop, row, agreed, now, refuse);
  }
  const refused = new Set(issues.map((p) => p.row));
  const lines = [...places.lines].filter(([row]) => !refused.has(row));
  const taken = new Set(lines.map(([, line]) => line.orderId));
  return ok({
    issues: issues.sort((a, b) => a.row - b.row),
    ready: lines.map(([row]) => row),
    known: places.known.filter((row) => !refused.has(row)),
    orders: [...own].flatMap(([id, fields]) => (taken.has(id) ? newOrder(shop, id, fields) : [])),
    lines: lines.map(([, line]) => line),
    notes: unused.length === 0 ? [] : [`Columns not used: ${quoted(unused)}.`],
  });
}

/** What is agreed about each order: as it is in the shop, else as the file's first row that says so. */
function ownFieldsOf(shop: Shop, rows: readonly ReadRow[]): Map<string, OwnFields> {
  const current = new Map(shop.order.map((order) => [order.id, order]));
  const own = new Map<string, OwnFields>();
  for (const { orderId, own: said } of rows) {
    const order = current.get(orderId);
    const before = own.get(orderId);
    own.set(orderId, {
      customer: order ? order.customer : (before?.customer ?? said.customer),
      release: order ? asInstant(order.release) : (before?.release ?? said.release),
      due: order ? instant(order.due) : (before?.due ?? said.due),
      importance: order ? order.importance : (before?.importance ?? said.importance),
      rush: order ? order.rush : (before?.rush ?? said.rush),
      note: order ? order.note : (before?.note ?? said.note),
    });
  }
  return own;
}

const asInstant = (at: number | null): Instant | null => (at === null ? null : instant(at));

/** The column that each of an order's own fields is read from. */
const COLUMN_OF = {
  customer: 'customer',
  release: 'not before',
  due: 'due',
  importance: 'importance',
  rush: 'rush',
  note: 'note',
} as const satisfies Record<keyof OwnFields, OrderColumn>;

/** A row that says something else of its order than what is agreed. */
function refuseOtherwise(shop: Shop, row: ReadRow, agreed: OwnFields, refuse: Refuse): void {
  for (const field of Object.keys(row.own) as (keyof OwnFields)[]) {
    if (row.own[field] === null || row.own[field] === agreed[field]) continue;
    const said = show(agreed[field], shop.settings.timeZone);
    const here = shop.order.some((order) => order.id === row.orderId);
    const column = COLUMN_OF[field];
    refuse(
      row.row,
      column,
      here
        ? `Work order ${row.orderId} is in the shop with ${column} ${said}. Write the same here, or change it in Orders.`
        : `Another row of work order ${row.orderId} has ${column} ${said}. Write the same in both, or leave this one empty.`,
    );
  }
}

/** What keeps a new line from its order. */
function refuseForOrder(
  shop: Shop,
  { row, orderId }: ReadRow,
  agreed: OwnFields,
  now: Instant,
  refuse: Refuse,
): void {
  const { timeZone } = shop.settings;
  const order = shop.order.find((o) => o.id === orderId);
  if (order?.status === 'done' || order?.status === 'cancelled')
    refuse(
      row,
      'order',
      `Work order ${orderId} is ${order.status}. Open it again in Orders first, or use another number.`,
    );
  if (agreed.customer === null) refuse(row, 'customer', `The customer of work order ${orderId} is missing.`);
  if (agreed.due === null) refuse(row, 'due', `The due date of work order ${orderId} is missing.`);
  else if (agreed.due < now)
    refuse(
      row,
      'due',
      `The due date ${show(agreed.due, timeZone)} is past. Write one that is still to come.`,
    );
  if (agreed.due !== null && !startsBeforeDue({ release: agreed.release, due: agreed.due }))
    refuse(
      row,
      'not before',
      `The time in “not before”, ${show(agreed.release, timeZone)}, is not before the due date ${show(agreed.due, timeZone)}. Write an earlier one.`,
    );
}

/** A value as it would be written in the file. */
function show(value: OwnFields[keyof OwnFields], timeZone: string): string {
  if (value === null || value === '') return 'left empty';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return `“${value}”`;
  if (value <= 10) return String(value);
  const at = instant(value);
  return `${wallParts(at, timeZone).date} ${formatClock(at, timeZone)}`;
}

function newOrder(shop: Shop, id: string, own: OwnFields): WorkOrder[] {
  if (own.customer === null || own.due === null || shop.order.some((order) => order.id === id)) return [];
  const { customer, release, due } = own;
  return [
    {
      ...usualOrder,
      id,
      customer,
      release,
      due,
      importance: own.importance ?? usualOrder.importance,
      rush: own.rush ?? usualOrder.rush,
      note: own.note ?? usualOrder.note,
    },
  ];
}
