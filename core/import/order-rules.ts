import { otherCase } from '../edit/same-code.ts';
import { shortStageName } from '../part/stage.ts';
import { stageWithoutMachine, tooLong } from '../planning/too-long.ts';
import { startsBeforeDue, type OrderLine, type WorkOrder } from '../shop/order.ts';
import { termsOf } from '../shop/line-terms.ts';
import type { Shop } from '../shop/state.ts';
import type { JudgeContext, RowIssue } from './kind.ts';
import type { Place } from './order-place.ts';
import { formatDayYearAndClock } from '../time/wall.ts';
import { plainWords } from './words.ts';

type OfRow = Omit<RowIssue, 'row'>;

/** A row that says something else of its order than the others do, or than an order has to have. */
export function headIssues(
  shop: Shop,
  before: WorkOrder | null,
  order: WorkOrder,
  places: readonly Place[],
): RowIssue[] {
  const other = before ? null : otherCase(shop.order, order.id);
  return places.flatMap(({ row }): RowIssue[] => {
    const issues: RowIssue[] = [];
    const { customer, rush, orderId } = row;
    if (other) issues.push({ row: row.row, field: 'order', reason: `${other.message} ${other.advice}` });
    if (order.customer === '')
      issues.push({
        row: row.row,
        field: 'customer',
        reason: `The customer of work order ${orderId} is missing.`,
      });
    if (customer !== null && plainWords(customer) !== plainWords(order.customer))
      issues.push({
        row: row.row,
        field: 'customer',
        reason: before
          ? `Work order ${orderId} is in the shop with customer “${order.customer}”. Write the same here, or change it in Orders.`
          : `Another row of work order ${orderId} has customer “${order.customer}”. Write the same in both, or leave this one empty.`,
      });
    if (rush !== null && rush !== order.rush)
      issues.push({
        row: row.row,
        field: 'rush',
        reason: `Another row of work order ${orderId} says ${order.rush ? 'yes' : 'no'}. Write the same in both, or leave this one empty.`,
      });
    return issues;
  });
}

/** What is wrong with when a line is wanted. A date that the line has already is no news. */
export function datesIssues(
  { shop, now }: JudgeContext,
  { before }: Place,
  line: OrderLine,
  orderBefore: WorkOrder | null,
  order: WorkOrder,
): OfRow[] {
  const { timeZone } = shop.settings;
  const terms = termsOf(order, line);
  const had = before && orderBefore ? termsOf(orderBefore, before) : null;
  if (terms.due === 0)
    return [{ field: 'due', reason: `The due date of work order ${order.id} is missing.` }];
  const issues: OfRow[] = [];
  if (terms.due < now && had?.due !== terms.due)
    issues.push({
      field: 'due',
      reason: `The due date ${formatDayYearAndClock(terms.due, timeZone)} is past. Write one that is still to come, or say that it is meant so.`,
      acceptable: true,
    });
  if (!startsBeforeDue(terms))
    issues.push({
      field: 'not before',
      reason: `The time in “not before”, ${formatDayYearAndClock(terms.release ?? 0, timeZone)}, is not before the due date ${formatDayYearAndClock(terms.due, timeZone)}. Write an earlier one.`,
    });
  return issues;
}

/** A line must have a machine for every step it needs, and fit the longest of them. */
export function machineIssue(shop: Shop, line: OrderLine): OfRow | null {
  const stage = stageWithoutMachine(shop, line);
  if (stage !== null)
    return {
      field: 'part',
      reason: `The shop has no ${shortStageName(stage)} to make ${line.partId} on. Add one in Shop, Machines.`,
    };
  const reason = tooLong(shop, line);
  return reason === null ? null : { field: 'length', reason };
}
