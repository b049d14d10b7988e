import { completeQueues } from '../planning/complete-queues.ts';
import { operationsOf } from '../planning/operations.ts';
import { lineOfOperation, operationIdOf, stageOfOperation } from '../shop/order.ts';
import type { Record as FloorRecord } from '../shop/plan.ts';
import { good, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { Edit } from './apply.ts';
import { piecesOf, refuse, refuseTooMany, standing, underWay, type FloorCommand } from './floor-commands.ts';
import { setUp } from './floor-done.ts';
import { operationName, queueChanges } from './plan-commands.ts';
import { change, withChanges } from '../shop/row-change.ts';

/**
 * A paused operation leaves its machine: its pieces stay counted, the rest of it waits behind the next operation of the
 * queue, and the machine is free for that one. Refused while bending of its blanks is under way, which would otherwise
 * wait for work without a place.
 */
export function setAside(shop: Shop, command: FloorCommand<'floor.aside'>): Result<Edit> {
  const { operation: id, good: fine, scrapped } = command;
  const found = underWay(shop, id);
  if (!found.ok) return found;
  const record = found.value;
  const last = record.pauses.at(-1);
  if (!standing(record) || !last)
    return refuse(id, 'pause', `${operationName(id)} is not paused.`, 'Pause it first, with the reason.');
  if (last.aside)
    return refuse(id, 'pause', `${operationName(id)} is set aside already.`, 'There is nothing to do.');
  const bending = operationIdOf(lineOfOperation(id), 'brake');
  if (stageOfOperation(id) === 'shear' && shop.record.some((r) => r.id === bending))
    return refuse(
      id,
      'machine',
      `${operationName(bending)} has begun and waits for these blanks.`,
      'Shear the rest first, or report the shearing done.',
    );
  const tooMany = refuseTooMany(record, piecesOf(shop, record), fine);
  if (tooMany) return tooMany;
  const pauses = [...record.pauses.slice(0, -1), { ...last, aside: true as const }];
  const aside: FloorRecord = { ...record, good: fine, scrapped, pauses };
  const changes = [change('record', record, aside), ...setUp(shop, record)];
  return good({
    label: `Set ${operationName(id)} aside`,
    changes: [...changes, ...behindNext(withChanges(shop, changes), aside)],
  });
}

/** The stored plan with the operation behind the next one of its machine. @param shop as it is with it set aside */
function behindNext(shop: Shop, { id, machineId }: FloorRecord) {
  const queues = completeQueues(shop, operationsOf(shop).operations);
  const others = (queues[machineId] ?? []).filter((other) => other !== id);
  return queueChanges(shop, { ...queues, [machineId]: [...others.slice(0, 1), id, ...others.slice(1)] });
}
