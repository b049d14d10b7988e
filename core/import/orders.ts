import type { Command, Remembered } from '../edit/command.ts';
import { changeLine } from '../edit/line-change.ts';
import { usedNumber } from '../edit/line-issues.ts';
import { sentence } from '../result.ts';
import { usualLine, usualOrder, type OrderLine, type WorkOrder } from '../shop/order.ts';
import { sameContent } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { ImportKind, JudgeContext, JudgedRow, RowIssue } from './kind.ts';
import { orderFields } from './order-fields.ts';
import { differences, placeRows, type Place } from './order-place.ts';
import { orderHeadOf, orderRowOf, type OrderHead } from './order-said.ts';
import { spreadTerms } from './order-terms.ts';
import { datesIssues, headIssues, machineIssue } from './order-rules.ts';
import { wasOf } from './order-was.ts';

/** Files of work-order lines: new ones are added, changed ones are changed, what the file lacks stays as it is. */
export const orderFiles: ImportKind = {
  fields: orderFields,
  judge(read, context) {
    const { shop, past } = context;
    const rows = read.flatMap((one) => orderRowOf(shop, one) ?? []);
    const found: Found = { judged: new Map(), issues: [], orders: [], lines: [], missing: [] };
    const closed = rows.filter(({ orderId }) => past.order(orderId));
    for (const { row, orderId } of closed)
      found.judged.set(
        row,
        known(
          `work order ${orderId}`,
          `Work order ${orderId} is over and in the archive. Nothing of it is changed; new work needs another number.`,
        ),
      );
    const living = rows.filter((row) => !closed.includes(row));
    const byOrder = new Map<string, Place[]>();
    for (const place of placeRows(shop, living, (issue) => found.issues.push(issue)))
      byOrder.set(place.row.orderId, [...(byOrder.get(place.row.orderId) ?? []), place]);
    const lines = new Map<string, OrderLine[]>();
    for (const line of shop.line) lines.set(line.orderId, [...(lines.get(line.orderId) ?? []), line]);
    const heads = new Map<string, OrderHead[]>();
    for (const head of [...living, ...context.unread.flatMap((one) => orderHeadOf(one) ?? [])])
      heads.set(head.orderId, [...(heads.get(head.orderId) ?? []), head]);
    for (const [orderId, places] of byOrder) {
      const own = heads.get(orderId)!.sort((a, b) => a.row - b.row);
      judgeOrder({ orderId, places, heads: own, current: lines.get(orderId) ?? [] }, context, found);
    }
    const { orders, lines: taken } = found;
    const command =
      orders.length + taken.length === 0
        ? null
        : (fileName: string, remembered: Remembered): Command => ({
            do: 'orders.import',
            fileName,
            orders,
            lines: taken,
            remembered,
          });
    return { rows: found.judged, issues: found.issues, missing: found.missing, notes: [], command };
  },
};

interface OrderInFile {
  readonly orderId: string;
  readonly places: readonly Place[];
  /** All its rows, also those that cannot be taken, in the file's order. */
  readonly heads: readonly OrderHead[];
  /** Its lines in the shop. */
  readonly current: readonly OrderLine[];
}

interface Found {
  readonly judged: Map<number, JudgedRow>;
  readonly issues: RowIssue[];
  readonly orders: WorkOrder[];
  readonly lines: OrderLine[];
  readonly missing: { readonly id: string; readonly words: string }[];
}

const known = (subject: string, words = ''): JudgedRow => ({ state: 'known', subject, words, was: {} });

/** An order with all its rows: what it becomes, what each of its lines becomes, what speaks against it. */
function judgeOrder(
  { orderId, places, heads, current }: OrderInFile,
  context: JudgeContext,
  found: Found,
): void {
  const { shop } = context;
  const before = shop.order.find(({ id }) => id === orderId) ?? null;
  const here = new Set(places.map(({ before: line }) => line?.id));
  const others = current.filter(
    ({ id, makeUpFor, status }) => makeUpFor === null && status !== 'cancelled' && !here.has(id),
  );
  const bad = new Set<number>();
  const refuse = (issue: RowIssue): void => {
    found.issues.push(issue);
    if (!(issue.acceptable && context.accepted.has(issue.row))) bad.add(issue.row);
  };
  const order = orderOf(orderId, before, { places, heads, all: others.length === 0 });
  for (const { row, field, reason } of headIssues(shop, before, order.whole, places))
    refuse({ row, field, reason });
  const targets = places.map((place, k) => ({ place, line: lineOf(shop, place, order.lines[k]!) }));
  for (const { place, line } of targets) {
    const row = place.row.row;
    const changed =
      before === null ||
      place.before === null ||
      !sameContent(place.before, line) ||
      !sameContent(before, order.whole);
    if (!changed) continue;
    for (const issue of [
      ...lineRules(context, place, line, order.whole),
      ...datesIssues(context, place, line, before, order.whole),
    ])
      refuse({ ...issue, row });
  }
  const fine = targets.filter(({ place }) => !bad.has(place.row.row));
  for (const { place, line } of fine) {
    const was =
      before && place.before
        ? wasOf(shop, { order: before, line: place.before }, { order: order.whole, line })
        : {};
    const state = place.before === null ? 'new' : Object.keys(was).length > 0 ? 'changed' : 'known';
    found.judged.set(place.row.row, { state, subject: `line ${line.id}`, words: '', was });
  }
  const named = new Set(heads.map(({ number }) => number));
  const open = others.filter(({ status, number }) => status === 'open' && !named.has(number));
  if (before)
    found.missing.push(
      ...open.map(({ id, quantity, partId }) => ({
        id,
        words: `Line ${id} (${quantity} × ${partId}) is in the shop and not in the file. It stays as it is.`,
      })),
    );
  if (fine.length === 0) return;
  if (before === null || !sameContent(before, order.whole)) found.orders.push(order.whole);
  found.lines.push(
    ...fine.flatMap(({ place, line }) => (place.before && sameContent(place.before, line) ? [] : [line])),
  );
}

/** The order as its rows say. @param all the file has every line of it */
function orderOf(
  id: string,
  before: WorkOrder | null,
  { places, heads, all }: Pick<OrderInFile, 'places' | 'heads'> & { readonly all: boolean },
): { readonly whole: WorkOrder; readonly lines: ReturnType<typeof spreadTerms>['lines'] } {
  const { order, lines } = spreadTerms(before, places, heads, all);
  const first = <T>(of: (row: OrderHead) => T | null): T | null =>
    heads.map(of).find((value) => value !== null) ?? null;
  const base = before ?? {
    ...usualOrder,
    id,
    customer: first(({ customer }) => customer) ?? '',
    due: order.due ?? 0,
  };
  const rush = first((row) => row.rush) ?? base.rush;
  return { whole: { ...base, ...order, due: order.due ?? base.due, rush }, lines };
}

/** The line as its row says: what the row leaves open stays as it is, or is as usual. */
function lineOf(
  shop: Shop,
  { row, number, before }: Place,
  terms: ReturnType<typeof spreadTerms>['lines'][number],
): OrderLine {
  const { line, orderId } = row;
  const part = shop.part.find(({ id }) => id === line.partId);
  const usual = before ?? { ...usualLine, id: `${orderId}/${number}`, orderId, number };
  const lengthMm =
    before && !differences(line, before).includes('lengthMm')
      ? before.lengthMm
      : (line.lengthMm ?? part?.lengthMm ?? 0);
  return { ...usual, ...line, overrun: line.overrun ?? usual.overrun, lengthMm, ...terms };
}

/** What the rules of orders and lines say against a row. */
function lineRules(
  { shop, past }: JudgeContext,
  { before, row }: Place,
  line: OrderLine,
  order: WorkOrder,
): Omit<RowIssue, 'row'>[] {
  if (before && sameContent(before, line)) return [];
  const closed = order.status === 'done' || order.status === 'cancelled' ? order.status : null;
  if (closed)
    return [
      {
        field: 'order',
        reason: `Work order ${order.id} is ${closed}. Open it again in Orders first, or use another number.`,
      },
    ];
  if (before && before.status !== 'open')
    return [
      {
        field: 'line',
        reason: `Line ${line.id} is ${before.status} and the file says otherwise (${differences(row.line, before).join(', ') || 'dates or note'}). Leave the row out, or change the line in Orders.`,
      },
    ];
  const long = machineIssue(shop, line);
  if (long) return [long];
  if (!before)
    return past.line(line.id)
      ? [
          {
            field: 'line',
            reason: `Finished work of a line ${line.id} is on record. Give this one another number.`,
          },
        ]
      : usedNumber(shop, line).map(({ field, message, advice }) => ({
          field,
          reason: `${message} ${advice}`,
        }));
  const saved = changeLine(shop, before, line, order, new Set());
  if (!saved.ok) return [{ field: saved.issues[0]?.field ?? null, reason: sentence(saved.issues) }];
  if (saved.value.changes.some((one) => one.before === null))
    return [
      {
        field: 'quantity',
        reason: `Line ${line.id} is made for ${before.quantity} pieces already, in part at least. Add the ${line.quantity - before.quantity} more in Orders as a line of their own.`,
      },
    ];
  return [];
}
