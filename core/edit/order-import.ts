import type { OrderLine, WorkOrder } from '../shop/order.ts';
import { err, issue, ok, type Issue, type Result } from '../result.ts';
import { change, type Edit, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { lineIssues, orderIssues, startIssues, usedNumber } from './line-issues.ts';
import { counted } from '../units/count.ts';

/** Add what a file brought. Orders that exist already keep their own data and get the new lines. */
export function importOrders(
  shop: Shop,
  fileName: string,
  orders: readonly WorkOrder[],
  lines: readonly OrderLine[],
): Result<Edit> {
  const here = new Set(shop.order.map((o) => o.id));
  const known = new Map([...orders, ...shop.order].map((o) => [o.id, o]));
  const issues: Issue[] = [
    ...orders.flatMap((o, k) => orderIssues([...shop.order, ...orders.slice(0, k)], o)),
    ...lines.flatMap((l) => lineIssues(shop, l.orderId, l)),
  ];
  const seen = new Set(shop.line.map((l) => l.id));
  for (const line of lines) {
    if (seen.has(line.id))
      issues.push(
        issue(`line ${line.id}`, 'line', `Line ${line.id} already exists.`, 'Give it another number.'),
      );
    else issues.push(...usedNumber(shop, line, numbersIn(lines, line.orderId)));
    const order = known.get(line.orderId);
    if (order) issues.push(...startIssues(order, [line]));
    else
      issues.push(
        issue(`line ${line.id}`, 'order', `There is no work order ${line.orderId}.`, 'Add the order first.'),
      );
    seen.add(line.id);
  }
  if (issues.length > 0) return err(...issues);
  const changes: RowChange[] = [
    ...orders.filter((o) => !here.has(o.id)).map((o) => change('order', null, o)),
    ...lines.map((l) => change('line', null, l)),
  ];
  return ok({
    label: `Import ${counted(lines.length, 'line')} from ${fileName}`,
    changes,
  });
}

/** Looked through only where a number is needed: a file may hold thousands of lines. */
function* numbersIn(lines: readonly OrderLine[], orderId: string): Generator<number> {
  for (const line of lines) if (line.orderId === orderId) yield line.number;
}
