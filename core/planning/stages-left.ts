import { operationIdOf, type OrderLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import type { Stage } from '../part/stage.ts';
import { piecesFor, routingOf } from './routing.ts';

/**
 * The steps of a line's routing that are still to be done: not reported done, and with pieces to make.
 * @returns null when its part is gone, so that nobody can say
 */
export function stagesLeft(shop: Shop, line: OrderLine): Stage[] | null {
  const part = shop.part.find((p) => p.id === line.partId);
  if (!part) return null;
  const records = new Map(shop.record.map((r) => [r.id, r]));
  return routingOf(part).filter(
    (stage) =>
      (records.get(operationIdOf(line.id, stage))?.end ?? null) === null &&
      piecesFor(line, stage, records) > 0,
  );
}
