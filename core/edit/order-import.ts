import type { OrderLine, WorkOrder } from '../shop/order.ts';
import { err, issue, ok, type Issue, type Result } from '../result.ts';
import { change, sameContent, type Edit, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { counted } from '../units/count.ts';
import type { Command } from './command.ts';
import { memoryChanges } from './file-memory.ts';
import { changeLine } from './line-change.ts';
import { lineIssues, orderIssues, startIssues, usedNumber } from './line-issues.ts';
import { staleIssue } from './stale.ts';

type ImportOrders = Extract<Command, { readonly do: 'orders.import' }>;

/**
 * Add and change what a file brought, in one step. A line that work has begun on changes as far as that allows. What the file
 * does not name stays as it is.
 */
export function importOrders(shop: Shop, command: ImportOrders): Result<Edit> {
  const { fileName, orders, lines, remembered } = command;
  const ordersHere = new Map(shop.order.map((order) => [order.id, order]));
  const linesHere = new Map(shop.line.map((line) => [line.id, line]));
  const known = new Map([...ordersHere, ...orders.map((order) => [order.id, order] as const)]);
  const issues: Issue[] = orders.flatMap((order, k) => [
    ...orderIssues([...shop.order, ...orders.slice(0, k)], order),
    ...twice('work order', order.id, orders.slice(0, k)),
    ...present(staleIssue('order', `work order ${order.id}`, ordersHere.get(order.id) ?? null, order)),
  ]);
  const changes: RowChange[] = orders.flatMap((order) => {
    const before = ordersHere.get(order.id) ?? null;
    return before && sameContent(before, order) ? [] : [change('order', before, order)];
  });
  const seen = new Set<string>();
  const numbers = numbersOf(lines);
  let [added, changed] = [0, 0];
  for (const line of lines) {
    const before = linesHere.get(line.id) ?? null;
    const order = known.get(line.orderId);
    const own = [
      ...lineIssues(shop, line.orderId, line),
      ...present(staleIssue('line', `line ${line.id}`, before, line)),
    ];
    if (seen.has(line.id))
      own.push(
        issue(`line ${line.id}`, 'line', `Line ${line.id} is there twice.`, 'Give one another number.'),
      );
    if (!order)
      own.push(
        issue(`line ${line.id}`, 'order', `There is no work order ${line.orderId}.`, 'Add the order first.'),
      );
    seen.add(line.id);
    if (!before) own.push(...usedNumber(shop, line, numbers.get(line.orderId)));
    const saved =
      before && order && own.length === 0
        ? changeLine(shop, before, line, order, numbers.get(line.orderId)!)
        : null;
    if (saved && !saved.ok) own.push(...saved.issues);
    issues.push(...own);
    if (own.length > 0) continue;
    changes.push(...(saved?.ok ? saved.value.changes : [change('line', null, line)]));
    if (before) changed += 1;
    else added += 1;
  }
  issues.push(...datesThatClash(shop, known, command));
  if (issues.length > 0) return err(...issues);
  return ok({
    label: labelOf(fileName, added, changed),
    changes: [...changes, ...memoryChanges(shop, remembered)],
  });
}

/** Lines of the file, and others of its orders, that would have to start after they are due. */
function datesThatClash(
  shop: Shop,
  known: ReadonlyMap<string, WorkOrder>,
  { orders, lines }: ImportOrders,
): Issue[] {
  const named = new Set([...orders.map(({ id }) => id), ...lines.map(({ orderId }) => orderId)]);
  const after = new Map([...shop.line, ...lines].map((line) => [line.id, line]));
  return [...after.values()].flatMap((line) => {
    const order = named.has(line.orderId) ? known.get(line.orderId) : undefined;
    return order ? startIssues(order, [line]) : [];
  });
}

const present = <T>(value: T | null): T[] => (value === null ? [] : [value]);

const twice = (what: string, id: string, before: readonly { readonly id: string }[]): Issue[] =>
  before.some((one) => one.id === id)
    ? [issue(`${what} ${id}`, 'number', `The ${what} ${id} is there twice.`, 'Keep one of them.')]
    : [];

/** Line numbers that the file claims, by order: what changeLine adds gets others. */
function numbersOf(lines: readonly OrderLine[]): Map<string, Set<number>> {
  const numbers = new Map<string, Set<number>>();
  for (const { orderId, number } of lines)
    numbers.set(orderId, (numbers.get(orderId) ?? new Set()).add(number));
  return numbers;
}

function labelOf(fileName: string, added: number, changed: number): string {
  if (changed === 0) return `Import ${counted(added, 'line')} from ${fileName}`;
  if (added === 0) return `Change ${counted(changed, 'line')} by ${fileName}`;
  return `Import ${counted(added, 'line')} from ${fileName}, change ${changed}`;
}
