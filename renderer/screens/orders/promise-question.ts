import { orderLine, workOrder, type OrderLine, type WorkOrder } from '../../../core/shop/order.ts';
import type { Instant } from '../../../core/units/brand.ts';
import type { OrderEntries } from './order-entries.ts';
import { DAY } from '../../../core/units/duration.ts';

/** What the host is asked a date for. */
export interface PromiseQuestion {
  readonly order: WorkOrder;
  readonly lines: readonly OrderLine[];
}

/** A due date so far off that it presses nothing, while none is typed. */
const FAR = 30 * DAY;

/** The order as far as it is typed: its complete open lines. Null while there is nothing to look up. */
export function promiseQuestion(
  { order, lines }: Pick<OrderEntries, 'order' | 'lines'>,
  now: Instant,
): PromiseQuestion | null {
  if (order.status !== 'open') return null;
  const typed = workOrder.safeParse({
    ...order,
    customer: order.customer.trim() || '?',
    due: Number.isNaN(order.due) ? now + FAR : order.due,
  });
  if (!typed.success) return null;
  const complete = lines.flatMap((line): OrderLine[] => {
    const read = orderLine.safeParse({ ...line, id: `${order.id}/${line.number}`, orderId: order.id });
    return read.success && read.data.status === 'open' ? [read.data] : [];
  });
  return complete.length === 0 ? null : { order: typed.data, lines: complete };
}
