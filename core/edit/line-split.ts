import { completeQueues } from '../planning/complete-queues.ts';
import { piecesCovered } from '../planning/cut-lists.ts';
import { operationsOf } from '../planning/operations.ts';
import { STAGES, stepDone } from '../part/stage.ts';
import { err, issue, ok, type Issue, type Result } from '../result.ts';
import { LAST_LINE_NUMBER, nextLineNumber } from '../shop/line-number.ts';
import { operationIdOf, type OrderLine } from '../shop/order.ts';
import { change, withChanges, type Edit, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Command } from './command.ts';
import { startIssues } from './line-issues.ts';
import { queueChanges } from './queue-rows.ts';
import { staleIssue } from './stale.ts';

/**
 * Pieces of a line that stay together when it is split: those whose blanks are cut or lie on issued sheets, and one at
 * least. All of them once a step of it is done, since that was done for the whole line.
 */
export function piecesThatStay(shop: Shop, line: OrderLine): number {
  if (stepEnded(shop, line) !== null) return line.quantity;
  const cut = shop.record.find(({ id }) => id === operationIdOf(line.id, 'shear'))?.good ?? 0;
  return Math.min(line.quantity, Math.max(1, piecesCovered(shop, line.id, cut)));
}

const stepEnded = (shop: Shop, line: OrderLine) =>
  STAGES.findLast((stage) =>
    shop.record.some(({ id, end }) => id === operationIdOf(line.id, stage) && end !== null),
  ) ?? null;

/** Why a line is never split, whatever the pieces; null: it can be. */
export function splitRefusal(shop: Shop, line: OrderLine): Issue | null {
  const subject = `line ${line.id}`;
  const order = shop.order.find(({ id }) => id === line.orderId);
  const closed = [line.status, order?.status].find((status) => status === 'done' || status === 'cancelled');
  if (!order || closed !== undefined)
    return issue(
      subject,
      'status',
      `Line ${line.id} or its work order is ${closed ?? 'gone'}.`,
      'Open it first.',
    );
  const ended = stepEnded(shop, line);
  if (ended !== null)
    return issue(
      subject,
      'quantity',
      `Line ${line.id} is ${stepDone[ended]} already, so it stays one line.`,
      'To do a part of it later, pause the work at its machine and suspend it.',
    );
  if (piecesThatStay(shop, line) < line.quantity) return null;
  return issue(
    subject,
    'quantity',
    line.quantity === 1
      ? `Line ${line.id} is one piece.`
      : `All ${line.quantity} of line ${line.id} are cut or on issued sheets.`,
    'It stays one line.',
  );
}

/**
 * Split a line in two: so many of its pieces become a line of their own with the order's next number, due when it is said.
 * What is cut stays with the first, so no fact moves. The new line stands right behind the first in the queues that name
 * it, so nothing else moves either. Extra pieces that the customer takes stay with the first.
 */
export function splitLine(
  shop: Shop,
  { lineId, revision, later, due }: Extract<Command, { readonly do: 'line.split' }>,
): Result<Edit> {
  const subject = `line ${lineId}`;
  const line = shop.line.find(({ id }) => id === lineId) ?? null;
  const order = shop.order.find(({ id }) => id === line?.orderId);
  if (!line || !order)
    return err(issue(subject, 'line', `There is no line ${lineId}.`, 'It may have been removed already.'));
  const stale = staleIssue('line', subject, line, { ...line, revision });
  if (stale) return err({ ...stale, advice: 'It was not split: look at the new version first.' });
  const refused = splitRefusal(shop, line) ?? tooMany(shop, line, later);
  if (refused) return err(refused);
  const number = nextLineNumber(shop, order.id);
  if (number > LAST_LINE_NUMBER)
    return err(
      issue(
        subject,
        'line',
        `Work order ${order.id} has no line number left for the pieces of later.`,
        'Put them on another work order.',
      ),
    );
  const first: OrderLine = { ...line, quantity: line.quantity - later };
  const second: OrderLine = {
    ...{ ...line, id: `${order.id}/${number}`, number, revision: 0 },
    ...{ quantity: later, overrun: 0, due: due === order.due ? null : due },
  };
  const issues = startIssues(order, [second]);
  if (issues.length > 0) return err(...issues);
  const changes = [change('line', line, first), change('line', null, second)];
  return ok({
    label: `Split line ${line.id}: ${first.quantity} stay, ${later} are line ${second.id}`,
    changes: [...changes, ...behindFirst(withChanges(shop, changes), first.id, second.id)],
  });
}

function tooMany(shop: Shop, line: OrderLine, later: number): Issue | null {
  const stay = piecesThatStay(shop, line);
  if (later >= 1 && later <= line.quantity - stay) return null;
  const why = stay > 1 ? `, since ${stay} are cut or on issued sheets and stay with it` : '';
  return issue(
    `line ${line.id}`,
    'later',
    `Of the ${line.quantity} pieces of line ${line.id} 1 to ${line.quantity - stay} can be made later${why}.`,
    'Type a figure between these.',
  );
}

/** Each step of the second behind that of the first, where a queue names that one. @param shop with both lines */
function behindFirst(shop: Shop, firstId: string, secondId: string): RowChange[] {
  const { operations } = operationsOf(shop);
  const able = new Map(operations.map(({ id, machines }) => [id, machines.map((machine) => machine.id)]));
  const queues = completeQueues(shop, operations);
  const named: string[] = [];
  for (const stage of STAGES) {
    const [first, second] = [operationIdOf(firstId, stage), operationIdOf(secondId, stage)];
    const host = shop.queue.find((row) => row.operations.includes(first))?.id;
    if (host === undefined || able.get(second)?.includes(host) !== true) continue;
    if (queues[host]?.includes(first) !== true) continue;
    for (const { id } of shop.machine) queues[id] = (queues[id] ?? []).filter((other) => other !== second);
    queues[host] = queues[host].flatMap((id) => (id === first ? [first, second] : [id]));
    named.push(host);
  }
  return queueChanges(shop, operations, queues, named);
}
