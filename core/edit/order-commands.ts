import { startsBeforeDue, type OrderLine, type WorkOrder } from '../shop/order.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { change, type RowChange, type Edit } from '../shop/row-change.ts';
import { refuseStale } from './row-commands.ts';

/** Add or change a work order; lines of it that are not listed go. */
export function saveOrder(shop: Shop, order: WorkOrder, lines: readonly OrderLine[]): Result<Edit> {
  const before = shop.order.find((o) => o.id === order.id) ?? null;
  const stale = refuseStale(`work order ${order.id}`, before, order);
  if (stale) return stale;
  const issues = [...orderProblems(order), ...lines.flatMap((line) => lineProblems(shop, order.id, line))];
  const numbers = new Set(lines.map((l) => l.number));
  if (numbers.size < lines.length)
    issues.push(
      issue(`work order ${order.id}`, 'line', 'Two lines have the same number.', 'Give each line its own.'),
    );
  if (issues.length > 0) return err(...issues);
  const old = shop.line.filter((l) => l.orderId === order.id);
  const kept = new Set(lines.map((l) => l.id));
  return ok({
    label: before ? `Change work order ${order.id}` : `Add work order ${order.id}`,
    changes: [
      change('order', before, order),
      ...lines.map((line) => change('line', old.find((l) => l.id === line.id) ?? null, line)),
      ...old.filter((l) => !kept.has(l.id)).map((l) => change('line', l, null)),
    ],
  });
}

/** Remove a work order with its lines. Refused once work on it has started: cancel it instead, so that its hours stay on record. */
export function removeOrder(shop: Shop, orderId: string): Result<Edit> {
  const order = shop.order.find((o) => o.id === orderId);
  if (!order)
    return err(
      issue(
        `work order ${orderId}`,
        'number',
        `There is no work order ${orderId}.`,
        'It may have been removed already.',
      ),
    );
  const lines = shop.line.filter((l) => l.orderId === orderId);
  const started = lines.find((l) => hasStarted(shop, l.id));
  if (started)
    return err(
      issue(
        `work order ${orderId}`,
        'status',
        `Work on line ${started.id} has started.`,
        'Set the order to cancelled instead, so that its hours stay on record.',
      ),
    );
  return ok({
    label: `Remove work order ${orderId}`,
    changes: [...lines.map((l) => change('line', l, null)), change('order', order, null)],
  });
}

export function saveLine(shop: Shop, line: OrderLine): Result<Edit> {
  const before = shop.line.find((l) => l.id === line.id) ?? null;
  const stale = refuseStale(`line ${line.id}`, before, line);
  if (stale) return stale;
  const issues = lineProblems(shop, line.orderId, line);
  if (!shop.order.some((o) => o.id === line.orderId))
    issues.push(
      issue(`line ${line.id}`, 'order', `There is no work order ${line.orderId}.`, 'Add the order first.'),
    );
  if (issues.length > 0) return err(...issues);
  return ok({
    label: before ? `Change line ${line.id}` : `Add line ${line.id}`,
    changes: [change('line', before, line)],
  });
}

export function removeLine(shop: Shop, lineId: string): Result<Edit> {
  const line = shop.line.find((l) => l.id === lineId);
  if (!line)
    return err(
      issue(`line ${lineId}`, 'line', `There is no line ${lineId}.`, 'It may have been removed already.'),
    );
  if (hasStarted(shop, lineId))
    return err(
      issue(
        `line ${lineId}`,
        'status',
        `Work on line ${lineId} has started.`,
        'Set the line to cancelled instead.',
      ),
    );
  if (shop.line.filter((l) => l.orderId === line.orderId).length === 1)
    return err(
      issue(
        `line ${lineId}`,
        'line',
        `Line ${lineId} is the only line of its order.`,
        'Remove the whole work order instead.',
      ),
    );
  return ok({ label: `Remove line ${lineId}`, changes: [change('line', line, null)] });
}

/** Add what a file brought. Orders that exist already keep their own data and get the new lines. */
export function importOrders(
  shop: Shop,
  fileName: string,
  orders: readonly WorkOrder[],
  lines: readonly OrderLine[],
): Result<Edit> {
  const here = new Set(shop.order.map((o) => o.id));
  const known = new Set([...here, ...orders.map((o) => o.id)]);
  const issues: Issue[] = [
    ...orders.flatMap(orderProblems),
    ...lines.flatMap((l) => lineProblems(shop, l.orderId, l)),
  ];
  const seen = new Set(shop.line.map((l) => l.id));
  for (const line of lines) {
    if (seen.has(line.id))
      issues.push(
        issue(`line ${line.id}`, 'line', `Line ${line.id} already exists.`, 'Give it another number.'),
      );
    if (!known.has(line.orderId))
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
    label: `Import ${lines.length} ${lines.length === 1 ? 'line' : 'lines'} from ${fileName}`,
    changes,
  });
}

function orderProblems(order: WorkOrder): Issue[] {
  if (startsBeforeDue(order)) return [];
  return [
    issue(
      `work order ${order.id}`,
      'release',
      'The time in “Not before” is not before the due date.',
      'Set an earlier “Not before” or a later due date.',
    ),
  ];
}

/** What a line names must be there: part, material with that gauge, colour. */
function lineProblems(shop: Shop, orderId: string, line: OrderLine): Issue[] {
  const subject = `line ${line.id}`;
  const issues: Issue[] = [];
  if (line.orderId !== orderId || line.id !== `${orderId}/${line.number}`)
    issues.push(
      issue(
        subject,
        'line',
        `${line.id} is not a line of work order ${orderId}.`,
        `Name it ${orderId}/${line.number}.`,
      ),
    );
  if (!shop.part.some((p) => p.id === line.partId))
    issues.push(
      issue(
        subject,
        'part',
        `There is no part ${line.partId}.`,
        'Add the part in Shop, Parts, or choose another.',
      ),
    );
  if (!shop.colour.some((c) => c.id === line.colourId))
    issues.push(
      issue(
        subject,
        'colour',
        `There is no colour ${line.colourId}.`,
        'Add the colour in Shop, Colours, or choose another.',
      ),
    );
  const material = shop.material.find((m) => m.id === line.materialId);
  if (!material)
    issues.push(
      issue(
        subject,
        'material',
        `There is no material ${line.materialId}.`,
        'Add it in Shop, Materials, or choose another.',
      ),
    );
  else if (!material.gauges.some((g) => g.label === line.gauge))
    issues.push(
      issue(
        subject,
        'gauge',
        `${material.name} has no gauge ${line.gauge}.`,
        `It has ${material.gauges.map((g) => g.label).join(', ')}.`,
      ),
    );
  return issues;
}

const hasStarted = (shop: Shop, lineId: string): boolean =>
  shop.record.some((r) => r.id.startsWith(`${lineId}:`));
