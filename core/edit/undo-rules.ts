import { issue, type Issue } from '../result.ts';
import { lineOfOperation, type OrderLine, type WorkOrder } from '../shop/order.ts';
import { withChanges, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { hasStarted, startIssues } from './line-issues.ts';
import { wantedAgain } from './remake.ts';

/**
 * What the floor has done speaks against taking a plan's step back (or doing it again): a line with work on record would
 * go, or be of another metal than was cut; an order would be open again without the pieces that it lacks by now. So do
 * dates that were set meanwhile, where a line would start after it is due.
 * @param changes as they would be written
 */
export function undoIssues(shop: Shop, changes: readonly RowChange[]): Issue[] {
  return [
    ...changes.flatMap((one): Issue[] => {
      if (one.kind === 'line') return lineIssue(shop, one.before, one.after);
      if (one.kind === 'order' && one.after) return orderIssue(shop, one.after, changes);
      return [];
    }),
    ...dateIssues(shop, changes),
  ];
}

/** Lines whose own dates and their order's would clash: each of them was changed since. */
function dateIssues(shop: Shop, changes: readonly RowChange[]): Issue[] {
  const touched = new Set(
    changes.flatMap((one) =>
      one.kind === 'order' ? [one.id] : one.kind === 'line' ? [(one.after ?? one.before)!.orderId] : [],
    ),
  );
  if (touched.size === 0) return [];
  const next = withChanges(shop, changes);
  return next.order
    .filter(({ id }) => touched.has(id))
    .flatMap((order) =>
      startIssues(
        order,
        next.line.filter(({ orderId }) => orderId === order.id),
      ),
    );
}

function lineIssue(shop: Shop, before: OrderLine | null, after: OrderLine | null): Issue[] {
  if (before === null || !hasStarted(shop, before.id)) return [];
  const work = `Work on line ${before.id} has started meanwhile.`;
  const subject = `line ${before.id}`;
  if (after === null)
    return [issue(subject, 'status', work, 'Cancel the line in Orders instead, so that it stays on record.')];
  const same = CUT.every((key) => before[key] === after[key]);
  return same && (before.quantity === after.quantity || canGrow(shop, before, after))
    ? []
    : [
        issue(
          subject,
          'quantity',
          work,
          'Change the line in Orders, where it is said what becomes of what is cut.',
        ),
      ];
}

/** More pieces are made along, as long as no step of the line is done. */
const canGrow = (shop: Shop, before: OrderLine, after: OrderLine): boolean =>
  after.quantity > before.quantity &&
  !shop.record.some(({ id, end }) => lineOfOperation(id) === before.id && end !== null);

const CUT = ['partId', 'materialId', 'gauge', 'colourId', 'lengthMm'] as const;

function orderIssue(shop: Shop, order: WorkOrder, changes: readonly RowChange[]): Issue[] {
  const again = wantedAgain(shop, changes, order.id);
  if (again.ok && again.value.length === 0) return [];
  const subject = `work order ${order.id}`;
  const message = `Work on work order ${order.id} has ended meanwhile with pieces missing.`;
  return [
    issue(subject, 'status', message, 'Open it in Orders instead, where the missing pieces are asked for.'),
  ];
}
