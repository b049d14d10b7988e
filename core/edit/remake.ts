import { recordAfter, recordIn } from '../planning/routing.ts';
import { stagesLeft } from '../planning/stages-left.ts';
import { ok, type Result } from '../result.ts';
import { LAST_LINE_NUMBER, nextLineNumber } from '../shop/line-number.ts';
import { lineOfOperation, stageOfOperation, type OrderLine } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { change, withChanges, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { hasStarted } from './line-issues.ts';
import { refuse } from './refuse.ts';
import { wantedOf } from './wanted.ts';

/** A line for missing pieces, with the next number of the order. */
export function makeUp(shop: Shop, line: OrderLine, missing: number): Result<RowChange[]> {
  if (missing <= 0) return ok([]);
  const number = nextLineNumber(shop, line.orderId);
  if (number > LAST_LINE_NUMBER)
    return refuse(
      line.id,
      'line',
      `Work order ${line.orderId} has no line number left for the ${missing} pieces to make again.`,
      'Put them on another work order, and count them as good here.',
    );
  const again: OrderLine = {
    ...line,
    id: `${line.orderId}/${number}`,
    number,
    quantity: missing,
    overrun: 0,
    status: 'open',
    makeUpFor: line.id,
  };
  return ok([change('line', null, again)]);
}

/**
 * What a corrected count of finished work asks of the lines: pieces that were not good after all are made again, remakes
 * that nobody has begun lose those that were, and a line with work left is open again, with its order. While that is held
 * they wait with it. Of a cancelled line nothing is asked any more.
 */
export function remade(shop: Shop, record: OperationRecord, next: OperationRecord): Result<RowChange[]> {
  const line = shop.line.find((l) => l.id === lineOfOperation(record.id));
  const order = shop.order.find((o) => o.id === line?.orderId);
  if (!line || !order || next.good === record.good || next.end === null) return ok([]);
  if (line.status === 'cancelled' || order.status === 'cancelled') return ok([]);
  const more = missingIn(record, line) - missingIn(next, line);
  const waits = order.status === 'held' && more < 0;
  const added = waits ? ok<RowChange[]>([]) : makeUp(shop, line, -more);
  if (!added.ok) return added;
  const changes = [...added.value, ...(more > 0 ? fewerRemakes(shop, record, line, more) : [])];
  const after = withChanges(shop, [change('record', record, next), ...changes]);
  const reopened = line.status === 'done' && (waits || stagesLeft(after, line)?.length !== 0);
  if (reopened) changes.push(change('line', line, { ...line, status: 'open' }));
  if (order.status === 'done' && (reopened || added.value.length > 0))
    changes.push(change('order', order, { ...order, status: 'open', closedAt: null }));
  return ok(changes);
}

/** Pieces that finished work lacks of those it was for: blanks to set up and spare ones may be spoiled. */
function missingIn({ id, quantity, good: fine }: OperationRecord, line: OrderLine): number {
  const needed = stageOfOperation(id) === 'shear' ? Math.min(quantity, line.quantity) : quantity;
  return Math.max(0, needed - fine);
}

/** Pieces that were good need not be made again, where the next step can still take them. */
function fewerRemakes(shop: Shop, { id }: OperationRecord, line: OrderLine, more: number): RowChange[] {
  const next = recordAfter(recordIn(shop), id);
  if (next && next.end !== null) return [];
  let left = more;
  return shop.line
    .filter((l) => l.makeUpFor === line.id && l.status === 'open' && !hasStarted(shop, l.id))
    .flatMap((remake) => {
      const less = Math.min(left, remake.quantity);
      left -= less;
      if (less === 0) return [];
      const quantity = remake.quantity - less;
      // A remake of nothing is cancelled: it was asked for once, and stands for no pieces any more.
      const none: OrderLine = { ...remake, status: 'cancelled', makeUpFor: null };
      return [change('line', remake, quantity === 0 ? none : { ...remake, quantity })];
    });
}

/**
 * What an order or a line asks for when it is wanted again: work on it may have ended meanwhile with pieces missing, and
 * nothing was made again while it was held, cancelled or closed. Those are remakes now; a line without a step left is
 * done. Remakes that were given up come back with a cancelled order, not with one that was only held.
 * @param changes what opens it again
 */
export function wantedAgain(shop: Shop, changes: readonly RowChange[], orderId: string): Result<RowChange[]> {
  let next = withChanges(shop, changes);
  const added: RowChange[] = [];
  for (const line of next.line) {
    const before = shop.line.find((l) => l.id === line.id);
    if (line.orderId !== orderId || !before || wantedOf(next, line) !== 'now') continue;
    const was = wantedOf(shop, before);
    if (was === 'now') continue;
    const again = makeUp(next, line, missingOf(next, line, was === 'later'));
    if (!again.ok) return again;
    const done =
      stagesLeft(next, line)?.length === 0 ? [change('line', line, { ...line, status: 'done' })] : [];
    added.push(...again.value, ...done);
    next = withChanges(next, [...again.value, ...done]);
  }
  return ok(added);
}

/** Pieces of a line that no step still makes and no remake either. @param givenUp whether cancelled remakes count too */
function missingOf(shop: Shop, { id, quantity }: OrderLine, givenUp: boolean): number {
  const ended = shop.record.filter((r) => lineOfOperation(r.id) === id && r.end !== null);
  const made = ended.reduce((least, r) => Math.min(least, r.good), quantity);
  const again = shop.line.reduce(
    (sum, l) => sum + (l.makeUpFor === id && (givenUp || l.status !== 'cancelled') ? l.quantity : 0),
    0,
  );
  return Math.max(0, quantity - made - again);
}
