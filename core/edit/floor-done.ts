import type { Attribute } from '../shop/machine.ts';
import { attributesOf } from '../planning/operations.ts';
import { stagesLeft } from '../planning/stages-left.ts';
import { LAST_LINE_NUMBER, nextLineNumber } from '../shop/line-number.ts';
import { lineOfOperation, stageOfOperation, type OrderLine } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import {
  pausesUntil,
  piecesOf,
  refuse,
  refuseEarly,
  refuseTooMany,
  underWay,
  withName,
  type FloorCommand,
} from './floor-commands.ts';
import { operationName } from './plan-commands.ts';
import { change, withChanges, type RowChange, type Edit } from '../shop/row-change.ts';

/**
 * An operation is done: its record closes, and its machine stays set up as it was for it. Good pieces that are missing
 * because some were scrapped become a line of their own on the same order, so that they are cut and bent again. When
 * nothing of a line is left to do the line is done, and when no line of an order is left, the order.
 */
export function finishOperation(shop: Shop, command: FloorCommand<'floor.done'>): Result<Edit> {
  const { operation: id, at, good: fine, scrapped } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  const pieces = piecesOf(shop, record);
  const refusal =
    refuseEarly(shop, record, at) ??
    refuseTooMany(record, pieces, fine) ??
    refuseUncounted(id, pieces, fine, scrapped);
  if (refusal) return refusal;
  const line = shop.line.find((l) => l.id === lineOfOperation(id));
  const again = line ? makeUp(shop, line, pieces - fine) : ok<RowChange[]>([]);
  if (!again.ok) return again;
  const closed: OperationRecord = {
    ...record,
    quantity: Math.max(1, pieces),
    good: fine,
    scrapped,
    end: at,
    who: withName(shop, record.who, command.who),
    pauses: pausesUntil(record, at),
  };
  const changes = [
    change('record', record, closed),
    ...setUp(shop, record),
    ...shop.pin.filter((pin) => pin.id === id).map((pin) => change('pin', pin, null)),
    ...again.value,
  ];
  return ok({
    label: `Finish ${operationName(id)}: ${fine} good, ${scrapped} scrapped`,
    changes: [...changes, ...(line ? closeLine(withChanges(shop, changes), line, at) : [])],
  });
}

function refuseUncounted(id: string, pieces: number, fine: number, scrapped: number): Result<never> | null {
  const missing = pieces - fine - scrapped;
  if (missing <= 0) return null;
  return refuse(
    id,
    'good',
    `${missing} of ${pieces} pieces of ${operationName(id)} are neither good nor scrapped.`,
    'Count them as one or the other; scrapped ones are made again.',
  );
}

/** Its machine keeps what was set up for the operation. */
export function setUp(shop: Shop, record: OperationRecord): RowChange[] {
  const machine = shop.machine.find((m) => m.id === record.machineId);
  if (!machine) return [];
  const asked = attributesOf(stageOfOperation(record.id), record);
  const current = Object.entries(asked).every(
    ([name, value]) => machine.state?.[name as Attribute] === value,
  );
  if (current) return [];
  return [change('machine', machine, { ...machine, state: { ...machine.state, ...asked } })];
}

/** A line for the missing pieces, with the next number of the order. */
function makeUp(shop: Shop, line: OrderLine, missing: number): Result<RowChange[]> {
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

/** The line and its order, when nothing of them is left to do. @param shop as it is after the operation */
function closeLine(shop: Shop, line: OrderLine, at: number): RowChange[] {
  if (line.status !== 'open' || stagesLeft(shop, line)?.length !== 0) return [];
  const done = change('line', line, { ...line, status: 'done' });
  const order = shop.order.find((o) => o.id === line.orderId);
  const others = shop.line.filter((l) => l.orderId === line.orderId && l.id !== line.id);
  if (order?.status !== 'open' || others.some((l) => l.status === 'open')) return [done];
  return [done, change('order', order, { ...order, status: 'done', closedAt: at })];
}
