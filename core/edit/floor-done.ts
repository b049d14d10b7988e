import { isElsewhere } from '../part/stage.ts';
import type { Attribute } from '../shop/machine.ts';
import { attributesOn, takenFrom } from '../planning/set-up.ts';
import { stagesLeft } from '../planning/stages-left.ts';
import { lineOfOperation, type OrderLine } from '../shop/order.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { pausesUntil, underWay, withName, type FloorCommand } from './floor-commands.ts';
import { countedOn, neededOf, piecesOf } from './floor-counts.ts';
import { momentOn } from './floor-times.ts';
import { operationName } from './plan-commands.ts';
import { refuse } from './refuse.ts';
import { makeUp } from './remake.ts';
import { wantedOf } from './wanted.ts';
import { change, withChanges, type RowChange, type Edit } from '../shop/row-change.ts';

/**
 * An operation is done: its record closes, and its machine stays set up as it was for it. Good pieces that are missing
 * because some were scrapped become a line of their own on the same order, so that they are cut and bent again. When
 * nothing of a line is left to do the line is done, and when no line of an order is left, the order. While the order is
 * held, pieces to make again wait until it is opened (core/edit/remake.ts). Of a line that was cancelled any count is
 * taken: the pieces made stay on record, and nothing is made again.
 */
export function finishOperation(shop: Shop, command: FloorCommand<'floor.done'>): Result<Edit> {
  const { operation: id } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  const counts = countedOn(shop, record, command);
  if (!counts.ok) return counts;
  const { good: fine, scrapped } = counts.value;
  const moment = momentOn(shop, record, command.at, command.given === true);
  if (!moment.ok) return moment;
  const { at, note } = moment.value;
  const needed = Math.max(record.good, neededOf(shop, record));
  const line = shop.line.find((l) => l.id === lineOfOperation(id));
  const wanted = wantedOf(shop, line);
  const uncounted = wanted === 'not' ? null : refuseUncounted(id, wanted, needed - fine - scrapped, needed);
  if (uncounted) return uncounted;
  const again = line && wanted === 'now' ? makeUp(shop, line, needed - fine) : ok<RowChange[]>([]);
  if (!again.ok) return again;
  const closed: OperationRecord = {
    ...record,
    quantity: Math.max(1, piecesOf(shop, record)),
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
  // A line that lacks pieces stays open with its held order, so that they are asked for when that is opened.
  const closes = wanted === 'now' || (wanted === 'later' && fine >= needed);
  return ok({
    label: `Finish ${operationName(id)}: ${fine} good, ${scrapped} scrapped${note}`,
    changes: [...changes, ...(line && closes ? closeLine(withChanges(shop, changes), line, at) : [])],
  });
}

function refuseUncounted(
  id: string,
  wanted: 'now' | 'later',
  missing: number,
  pieces: number,
): Result<never> | null {
  if (missing <= 0) return null;
  return refuse(
    id,
    'good',
    `${missing} of ${pieces} pieces of ${operationName(id)} are neither good nor scrapped.`,
    wanted === 'now'
      ? 'Count them as one or the other; scrapped ones are made again.'
      : 'The work order is held: pause and suspend the work, and the rest of it waits until the order is opened.',
  );
}

/** Its machine keeps what was set up for the operation; another that stood with tools which both share has them no more. */
export function setUp(shop: Shop, record: OperationRecord): RowChange[] {
  const machine = shop.machine.find((m) => m.id === record.machineId);
  if (!machine || isElsewhere(machine.stage)) return [];
  const asked = attributesOn(shop, machine, record);
  return shop.machine.flatMap((other) => {
    const now = other === machine ? asked : takenFrom(shop, other.state, asked);
    const current = Object.entries(now).every(([name, value]) => other.state?.[name as Attribute] === value);
    return current ? [] : [change('machine', other, { ...other, state: { ...other.state, ...now } })];
  });
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
