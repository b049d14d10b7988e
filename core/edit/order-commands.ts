import { piecesTaken } from '../planning/cut-lists.ts';
import type { OrderLine, WorkOrder } from '../shop/order.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { change, sameContent, type RowChange, type Edit } from '../shop/row-change.ts';
import type { Command } from './command.ts';
import { changeLine } from './line-change.ts';
import { hasStarted, lineIssues, orderIssues, startIssues, usedNumber } from './line-issues.ts';
import { wantedAgain } from './remake.ts';
import { refuseStale, staleIssue } from './stale.ts';

type SaveOrder = Extract<Command, { readonly do: 'order.save' }>;

/**
 * Add or change a work order: itself, those of its lines that are given, and those named to go. Whatever is not named stays
 * as it is. Each row is checked against the revision that was read of it.
 */
export function saveOrder(shop: Shop, command: SaveOrder): Result<Edit> {
  const { order, lines, removed, at } = command;
  const before = shop.order.find((o) => o.id === order.id) ?? null;
  const own = new Map(shop.line.filter((l) => l.orderId === order.id).map((l) => [l.id, l]));
  const stale = staleRows(before, own, command);
  if (stale.length > 0) return err(...stale);
  const issues = [
    ...orderIssues(shop.order, order),
    ...lines.flatMap((line) => lineIssues(shop, order.id, line)),
    ...removed.flatMap(({ id }) => (own.has(id) ? removalIssues(shop, own.get(id)!) : [])),
    ...setIssues(command, own),
    ...startIssues(order, linesAfter(command, own)),
  ];
  if (issues.length > 0) return err(...issues);
  const numbers = new Set(lines.map((l) => l.number));
  const closed = closedOrder(before, order, at);
  const changes: RowChange[] = before && sameContent(before, closed) ? [] : [change('order', before, closed)];
  const notes: string[] = [];
  for (const line of lines) {
    const saved = changedLine(shop, own.get(line.id) ?? null, line, closed, numbers);
    if (!saved.ok) return saved;
    changes.push(...saved.value.changes);
    if (saved.value.note !== '') notes.push(saved.value.note);
  }
  for (const { id } of removed) if (own.has(id)) changes.push(change('line', own.get(id)!, null));
  const again = wantedAgain(shop, changes, order.id);
  if (!again.ok) return again;
  changes.push(...again.value);
  const label = before ? `Change work order ${order.id}` : `Add work order ${order.id}`;
  return ok({ label: [label, ...notes].join('; '), changes });
}

/** The order with the moment it closed: kept while it is closed, set as it closes, forgotten as it is opened again. */
function closedOrder(before: WorkOrder | null, order: WorkOrder, at: WorkOrder['closedAt']): WorkOrder {
  const isClosed = order.status === 'done' || order.status === 'cancelled';
  const wasClosed = before?.status === 'done' || before?.status === 'cancelled';
  return { ...order, closedAt: isClosed ? ((wasClosed ? before.closedAt : null) ?? at) : null };
}

function staleRows(
  before: WorkOrder | null,
  own: ReadonlyMap<string, OrderLine>,
  { order, lines, removed }: SaveOrder,
): Issue[] {
  return [
    staleIssue('order', `work order ${order.id}`, before, order),
    ...lines.map((line) => staleIssue('line', `line ${line.id}`, own.get(line.id) ?? null, line)),
    // What is gone already need not go again.
    ...removed.map(({ id, revision }) =>
      own.has(id) ? staleIssue('line', `line ${id}`, own.get(id)!, { id, revision, removed: true }) : null,
    ),
  ].filter((one) => one !== null);
}

/** The order's lines as they will be. */
function linesAfter({ lines, removed }: SaveOrder, own: ReadonlyMap<string, OrderLine>): OrderLine[] {
  const after = new Map([...own, ...lines.map((line) => [line.id, line] as const)]);
  for (const { id } of removed) after.delete(id);
  return [...after.values()];
}

/** What the lines of an order must be together. */
function setIssues(command: SaveOrder, own: ReadonlyMap<string, OrderLine>): Issue[] {
  const { order, lines, removed } = command;
  const subject = `work order ${order.id}`;
  const gone = new Set(removed.map(({ id }) => id));
  return [
    ...(new Set(lines.map((l) => l.number)).size < lines.length || lines.some(({ id }) => gone.has(id))
      ? [issue(subject, 'line', 'Two lines have the same number.', 'Give each line its own.')]
      : []),
    ...(linesAfter(command, own).length === 0
      ? [
          issue(
            subject,
            'line',
            `Of work order ${order.id} no line would be left.`,
            'Keep or add one, or remove the whole work order.',
          ),
        ]
      : []),
  ];
}

/** A line that is new, or changed as far as the work on it allows. */
function changedLine(
  shop: Shop,
  before: OrderLine | null,
  line: OrderLine,
  order: Pick<WorkOrder, 'status'>,
  claimed: Set<number>,
): ReturnType<typeof changeLine> {
  if (before) return changeLine(shop, before, line, order, claimed);
  const used = usedNumber(shop, line, claimed);
  return used.length > 0 ? err(...used) : ok({ changes: [change('line', null, line)], note: '' });
}

/** Why a line cannot be removed: work that was done, sheets that were issued and scrapped pieces stay on record. */
function removalIssues(shop: Shop, { id, makeUpFor }: OrderLine): Issue[] {
  const why = hasStarted(shop, id)
    ? `Work on line ${id} has started.`
    : piecesTaken(shop, id) > 0
      ? `Sheets were issued for line ${id}.`
      : makeUpFor !== null
        ? `Line ${id} makes scrapped pieces of line ${makeUpFor} again.`
        : null;
  return why === null
    ? []
    : [issue(`line ${id}`, 'status', why, 'Set the line to cancelled instead, so that it stays on record.')];
}

/** Remove a work order with its lines. Refused once work on it has started: cancel it instead, so that its hours stay on record. */
export function removeOrder(
  shop: Shop,
  { orderId, revision, lines: read }: Extract<Command, { readonly do: 'order.remove' }>,
): Result<Edit> {
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
  const known = new Map(read.map((line) => [line.id, line.revision]));
  const stale = [
    staleIssue('order', `work order ${orderId}`, order, { id: orderId, revision, removed: true }),
    ...lines.map((line) =>
      staleIssue('line', `line ${line.id}`, line, {
        ...{ id: line.id, revision: known.get(line.id) ?? null, removed: true },
      }),
    ),
  ].filter((one) => one !== null);
  if (stale.length > 0) return err(...stale);
  const started = lines.flatMap((l) => removalIssues(shop, l))[0];
  if (started)
    return err(
      issue(
        `work order ${orderId}`,
        'status',
        started.message,
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
  const stale = refuseStale('line', `line ${line.id}`, before, line);
  if (stale) return stale;
  const issues = lineIssues(shop, line.orderId, line);
  const order = shop.order.find((o) => o.id === line.orderId);
  if (!order)
    issues.push(
      issue(`line ${line.id}`, 'order', `There is no work order ${line.orderId}.`, 'Add the order first.'),
    );
  else issues.push(...startIssues(order, [line]));
  if (!order || issues.length > 0) return err(...issues);
  const saved = changedLine(shop, before, line, order, new Set());
  if (!saved.ok) return saved;
  const { changes, note } = saved.value;
  const again = wantedAgain(shop, changes, order.id);
  if (!again.ok) return again;
  const label = before ? `Change line ${line.id}` : `Add line ${line.id}`;
  return ok({ label: note === '' ? label : `${label}; ${note}`, changes: [...changes, ...again.value] });
}

export function removeLine(
  shop: Shop,
  { lineId, revision }: Extract<Command, { readonly do: 'line.remove' }>,
): Result<Edit> {
  const line = shop.line.find((l) => l.id === lineId);
  if (!line)
    return err(
      issue(`line ${lineId}`, 'line', `There is no line ${lineId}.`, 'It may have been removed already.'),
    );
  const stale = staleIssue('line', `line ${lineId}`, line, { id: lineId, revision, removed: true });
  if (stale) return err(stale);
  const issues = removalIssues(shop, line);
  if (issues.length > 0) return err(...issues);
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
