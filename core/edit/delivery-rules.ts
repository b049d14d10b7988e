import { err, ok, issue, type Issue, type Result } from '../result.ts';
import { change, type Edit } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Delivery } from '../shop/stock.ts';
import { rowName } from './row-name.ts';

/** What is wrong with an expected delivery. */
export function deliveryIssues(shop: Shop, { sheetId }: Delivery, subject: string): Issue[] {
  const sheet = shop.sheet.find(({ id }) => id === sheetId);
  if (!sheet) {
    const advice = 'Add the size in Shop, Sheet sizes first, or choose another.';
    return [issue(subject, 'stock', `There is no stock ${sheetId}.`, advice)];
  }
  if (sheet.form !== 'remnant') return [];
  const message = `Stock ${sheetId} are remnants, which nobody delivers.`;
  return [issue(subject, 'stock', message, 'Choose the sheet or coil that was ordered.')];
}

/** What came by a delivery is no longer expected; a rest stays so. @param received the stock's own changes */
export function byDelivery(shop: Shop, received: Edit, deliveryId: string, pieces: number): Result<Edit> {
  const delivery = shop.delivery.find(({ id }) => id === deliveryId);
  if (!delivery) {
    const advice = 'It may have been received already: look at the history of the stock.';
    const subject = rowName('delivery', deliveryId);
    return err(issue(subject, 'id', `There is no delivery ${deliveryId}.`, advice));
  }
  const left = delivery.pieces - pieces;
  const rest = left > 0 ? { ...delivery, pieces: left } : null;
  return ok({
    label: `${received.label}, delivery ${deliveryId}${rest ? `, ${left} still expected` : ''}`,
    changes: [...received.changes, change('delivery', delivery, rest)],
  });
}
