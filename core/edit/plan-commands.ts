import { completeQueues } from '../planning/complete-queues.ts';
import { operationsOf, type ShopOperation } from '../planning/operations.ts';
import { isElsewhere, stepWord } from '../part/stage.ts';
import { lineOfOperation, stageOfOperation } from '../shop/order.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { change, type Edit } from '../shop/row-change.ts';
import { counted } from '../units/count.ts';
import type { Command } from './command.ts';
import { queueChanges } from './queue-rows.ts';
import { refuseUnseen } from './stale.ts';

type Queues = Readonly<Record<string, readonly string[]>>;
type CommandOf<K extends Command['do']> = Extract<Command, { readonly do: K }>;

/** "1042/2 shearing" or "1042/2 bending": an operation as people say it. */
export const operationName = (operation: string): string =>
  `${lineOfOperation(operation)} ${stepWord[stageOfOperation(operation)]}`;

/** Keep operations on their machines and at their ranks, where they were seen, when the plan is improved; all or none. */
export function pinOperations(
  shop: Shop,
  { operations: ids, seen }: CommandOf<'operation.pin'>,
): Result<Edit> {
  const { operations } = operationsOf(shop);
  const queues = completeQueues(shop, operations);
  const machines = new Map(ids.map((id) => [id, machineWith(queues, id)]));
  for (const [id, machineId] of machines) {
    if (machineId === undefined) return unknownOperation(id);
    if (isElsewhere(stageOfOperation(id))) return err(outsideIssue(id));
  }
  const named = [...new Set(machines.values())].filter((id) => id !== undefined);
  const unseen = refuseUnseen(shop, seen, named);
  if (unseen) return unseen;
  const pinned = new Set(shop.pin.map(({ id }) => id));
  const fresh = [...machines.keys()].filter((id) => !pinned.has(id));
  const label = `Pin ${namesOf(ids)}`;
  if (fresh.length === 0) return ok({ label, changes: [] });
  const changes = queueChanges(shop, operations, queues, named);
  return ok({ label, changes: [...changes, ...fresh.map((id) => change('pin', null, { id, revision: 0 }))] });
}

const outsideIssue = (id: string): Issue =>
  issue(
    operationName(id),
    'place',
    'Outside work has no order that a pin could keep.',
    'Pin a step before it.',
  );

/** Let planning move them again. One whose work is not open any more stands in no queue, so it asks none. */
export function unpinOperations(
  shop: Shop,
  { operations: ids, seen }: CommandOf<'operation.unpin'>,
): Result<Edit> {
  const queues = completeQueues(shop, operationsOf(shop).operations);
  const machines = new Set(ids.flatMap((id) => machineWith(queues, id) ?? []));
  const unseen = refuseUnseen(shop, seen, [...machines]);
  if (unseen) return unseen;
  const pins = shop.pin.filter(({ id }) => ids.includes(id));
  return ok({ label: `Unpin ${namesOf(ids)}`, changes: pins.map((pin) => change('pin', pin, null)) });
}

/** "1042/2 bending", or "3 operations". */
export const namesOf = (ids: readonly string[]): string =>
  ids.length === 1 ? operationName(ids[0]!) : counted(ids.length, 'operation');

export const machineWith = (queues: Queues, operation: string): string | undefined =>
  Object.keys(queues).find((machineId) => queues[machineId]?.includes(operation));

/**
 * Take a whole new plan. Every open operation must stand in it exactly once, on a machine that can do it. A machine the
 * plan does not name (one without open hours) keeps what waits for it, and the lines of that need not be in the plan.
 */
export function replacePlan(shop: Shop, { queues, label, seen }: CommandOf<'plan.replace'>): Result<Edit> {
  const unseen = refuseUnseen(
    shop,
    seen,
    shop.machine.map((m) => m.id),
  );
  if (unseen) return unseen;
  const { operations } = operationsOf(shop);
  const byId = new Map(operations.map((o) => [o.id, o]));
  const planned = new Set<string>();
  for (const [machineId, ids] of Object.entries(queues)) {
    for (const id of ids) {
      const operation = byId.get(id);
      if (!operation) return unknownOperation(id);
      if (planned.has(id))
        return err(
          issue(operationName(id), 'queue', `${operationName(id)} is in the plan twice.`, 'Plan again.'),
        );
      const refusal = refuseMachine(shop, operation, machineId);
      if (refusal) return refusal;
      planned.add(id);
    }
  }
  const kept = keptBy(shop, operations, queues, planned);
  const waiting = new Set(Object.values(kept).flat().map(lineOfOperation));
  const missing = operations.find((o) => !planned.has(o.id) && !waiting.has(o.line.id));
  if (missing)
    return err(
      issue(
        operationName(missing.id),
        'queue',
        `${operationName(missing.id)} is missing from the plan.`,
        'Plan again.',
      ),
    );
  return ok({
    label,
    changes: queueChanges(shop, operations, { ...queues, ...kept }, Object.keys(queues)),
  });
}

/** What stays in the queues of machines that a new plan does not name. */
function keptBy(
  shop: Shop,
  operations: readonly ShopOperation[],
  queues: Queues,
  planned: ReadonlySet<string>,
): Record<string, string[]> {
  const current = Object.entries(completeQueues(shop, operations));
  return Object.fromEntries(
    current.flatMap(([machineId, ids]) =>
      machineId in queues ? [] : [[machineId, ids.filter((id) => !planned.has(id))]],
    ),
  );
}

/** Why an operation may not go to a machine; null when it may. */
export function refuseMachine(shop: Shop, operation: ShopOperation, machineId: string): Result<never> | null {
  const name = operationName(operation.id);
  if (!shop.machine.some((m) => m.id === machineId))
    return err(
      issue(name, 'machine', `There is no machine ${machineId}.`, 'Choose one of the machines on the board.'),
    );
  if (operation.started && operation.started.machineId !== machineId)
    return err(
      issue(
        name,
        'machine',
        `${name} was started on ${operation.started.machineId}.`,
        'It has to be finished there first.',
      ),
    );
  if (operation.machines.some((m) => m.id === machineId)) return null;
  const why =
    operation.refused.find((r) => r.machineId === machineId)?.reason ??
    `${machineId} is not a machine for this step.`;
  const able = operation.machines.map((m) => m.id).join(', ');
  return err(
    issue(name, 'machine', `${name} cannot go to ${machineId}: ${why}`, `Machines that can do it: ${able}.`),
  );
}

export const unknownOperation = (id: string): Result<never> =>
  err(
    issue(
      operationName(id),
      'operation',
      `${operationName(id)} is not open any more.`,
      'Choose an operation that is on the board.',
    ),
  );
