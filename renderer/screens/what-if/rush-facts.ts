import { formatDayAndClock } from '../../../core/time/wall.ts';
import type { RushWay } from '../../../core/planning/answers.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import { termsOf } from '../../../core/shop/line-terms.ts';
import { lineOfOperation, type OrderLine, type WorkOrder } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Interval } from '../../../core/time/interval.ts';
import { counted } from '../../../core/units/count.ts';
import { HOUR } from '../../../core/units/duration.ts';

/** What the rush is and when it is due, in a sentence. */
export function rushFacts(shop: Shop, lineIds: readonly string[]): string {
  const wanted = new Set(lineIds);
  const lines = shop.line.filter((line) => wanted.has(line.id));
  const orders = shop.order.filter((order) => lines.some((line) => line.orderId === order.id));
  const [first] = lines;
  if (!first || orders.length === 0) return '';
  const dues = lines.flatMap((line) =>
    orders.filter(({ id }) => id === line.orderId).map((order) => termsOf(order, line).due),
  );
  const due = formatDayAndClock(Math.min(...dues), shop.settings.timeZone);
  const when = new Set(dues).size > 1 ? `the first of them due ${due}` : `due ${due}`;
  const whose = orders.length === 1 ? ` for ${orders[0]!.customer}` : ` of ${orders.length} work orders`;
  const what =
    lines.length === 1
      ? `${first.quantity} × ${shop.part.find((part) => part.id === first.partId)?.name ?? first.partId}`
      : `${lines.length} lines`;
  return `${what}${whose}, ${when}.`;
}

/** A work order of a rush, and what the dialog calls it. */
export interface RushOrder {
  readonly id: string;
  readonly lineIds: readonly string[];
  readonly words: string;
}

/** The work orders of these lines, the first due first. */
export function rushOrders(shop: Shop, lineIds: readonly string[]): RushOrder[] {
  const wanted = new Set(lineIds);
  const lines = shop.line.filter(({ id }) => wanted.has(id));
  return shop.order
    .map((order) => ({ order, own: lines.filter(({ orderId }) => orderId === order.id) }))
    .filter(({ own }) => own.length > 0)
    .map(({ order, own }) => ({ order, own, due: Math.min(...own.map((line) => termsOf(order, line).due)) }))
    .sort((a, b) => a.due - b.due || (a.order.id < b.order.id ? -1 : 1))
    .map(({ order, own, due }) => ({
      id: order.id,
      lineIds: own.map(({ id }) => id),
      words: `${order.id}, ${order.customer}: ${counted(own.length, 'line')}, due ${formatDayAndClock(due, shop.settings.timeZone)}`,
    }));
}

/** The stretch of time that shows each way's whole rush: from the present to a little past the last of them. */
export function windowOf({ problem: { input } }: PlanView, ways: readonly RushWay[]): Interval {
  const last = Math.max(...ways.map(({ ready }) => ready), input.now + 8 * HOUR);
  return { start: input.now, end: last + (last - input.now) * 0.12 };
}

/** Open lines on which no work has started: those of which a rush can be made. */
export function openLines(shop: Shop, among: (order: WorkOrder) => boolean = () => true): string[] {
  const orders = new Set(shop.order.filter((o) => o.status === 'open' && among(o)).map(({ id }) => id));
  const started = new Set(shop.record.map(({ id }) => lineOfOperation(id)));
  return shop.line
    .filter((line) => orders.has(line.orderId) && line.status === 'open' && !started.has(line.id))
    .map(({ id }) => id);
}

/** Those of work orders marked rush. */
export const openRushLines = (shop: Shop): string[] => openLines(shop, ({ rush }) => rush);

type Saved = {
  readonly order: WorkOrder;
  readonly lines: readonly Pick<OrderLine, 'number' | 'status'>[];
} | null;

/**
 * The lines to ask about after a work order was saved: all open ones of an open rush, when it is new, was no rush or not
 * open before, or other lines or another date came in. A changed note asks nothing.
 */
export function rushAfterSave(before: Saved, after: NonNullable<Saved>): string[] {
  const { order, lines } = after;
  if (!order.rush || order.status !== 'open') return [];
  const same =
    before !== null &&
    before.order.rush &&
    before.order.status === 'open' &&
    before.order.due === order.due &&
    JSON.stringify(before.lines) === JSON.stringify(lines);
  return same
    ? []
    : lines.filter(({ status }) => status === 'open').map((line) => `${order.id}/${line.number}`);
}
