import { completeQueues } from '../planning/complete-queues.ts';
import { operationsOf } from '../planning/operations.ts';
import { recordAfter, recordIn } from '../planning/routing.ts';
import type { OperationRecord } from '../shop/plan.ts';
import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { standing, underWay, type FloorCommand } from './floor-commands.ts';
import { countedOn } from './floor-counts.ts';
import { setUp } from './floor-done.ts';
import { operationName } from './plan-commands.ts';
import { publishedOrder } from './publish-commands.ts';
import { queueChanges } from './queue-rows.ts';
import { refuse } from './refuse.ts';
import { change, withChanges, type Edit } from '../shop/row-change.ts';

/**
 * A paused operation leaves its machine: its pieces stay counted, the rest of it waits behind the next operation of the
 * queue, and the machine is free for that one. Refused while bending of its blanks is under way, which would otherwise
 * wait for work without a place.
 */
export function suspend(shop: Shop, command: FloorCommand<'floor.suspend'>): Result<Edit> {
  const { operation: id } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  const last = record.pauses.at(-1);
  if (!standing(record) || !last)
    return refuse(id, 'pause', `${operationName(id)} is not paused.`, 'Pause it first, with the reason.');
  if (last.suspended)
    return refuse(id, 'pause', `${operationName(id)} is already suspended.`, 'There is nothing to do.');
  const next = recordAfter(recordIn(shop), id);
  if (next)
    return refuse(
      id,
      'machine',
      `${operationName(next.id)} has started and waits for these blanks.`,
      'Shear the rest first, or report the shearing done.',
    );
  const counts = countedOn(shop, record, command);
  if (!counts.ok) return counts;
  const pauses = [...record.pauses.slice(0, -1), { ...last, suspended: true as const }];
  const suspended: OperationRecord = { ...record, ...counts.value, pauses };
  const changes = [change('record', record, suspended), ...setUp(shop, record)];
  return ok({
    label: `Suspend ${operationName(id)}`,
    changes: [...changes, ...behindNext(withChanges(shop, changes), suspended)],
  });
}

/** The stored plan, and what is published of it, with the operation behind the next one of its machine. @param shop as it is with it set aside */
function behindNext(shop: Shop, { id, machineId }: OperationRecord) {
  const { operations } = operationsOf(shop);
  // Work of an order that is held or cancelled has no place in the plan.
  if (!operations.some((o) => o.id === id)) return [];
  const queues = completeQueues(shop, operations);
  const behind = (queue: readonly string[]) => {
    const others = queue.filter((other) => other !== id);
    return [...others.slice(0, 1), id, ...others.slice(1)];
  };
  const set = { ...queues, [machineId]: behind(queues[machineId] ?? []) };
  return [
    ...queueChanges(shop, operations, set, [machineId]),
    ...publishedOrder(shop, machineId, id, behind),
  ];
}
