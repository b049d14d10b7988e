import type { OrderLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';

/**
 * Whether what is missing of a line is still asked for: now; later, while its order is held; or not any more, since it or
 * its order was cancelled, closed or removed.
 */
export function wantedOf(shop: Shop, line: OrderLine | undefined): 'now' | 'later' | 'not' {
  const order = shop.order.find((o) => o.id === line?.orderId);
  if (line?.status !== 'open' || !order || order.status === 'cancelled' || order.status === 'done')
    return 'not';
  return order.status === 'held' ? 'later' : 'now';
}
