import { unpublishedChanges } from '../planning/changed-queues.ts';
import { completeQueues } from '../planning/complete-queues.ts';
import { publishedQueues, queuesAfter } from '../planning/followed-plan.ts';
import { operationsOf } from '../planning/operations.ts';
import { err, issue, ok, type Result } from '../result.ts';
import type { Queues } from '../schedule/problem.ts';
import { change, type Edit, type RowChange } from '../shop/row-change.ts';
import type { Settings } from '../shop/settings.ts';
import type { Shop } from '../shop/state.ts';
import type { Command } from './command.ts';
import { queueChanges } from './queue-rows.ts';
import { refuseUnseen } from './stale.ts';

/**
 * Let floor and paper follow the plan as the board shows it. That plan becomes the stored one, so that nothing jumps.
 * Changes nothing where they follow it already.
 */
export function publishPlan(
  shop: Shop,
  { note, seen }: Extract<Command, { readonly do: 'plan.publish' }>,
): Result<Edit> {
  if (shop.settings.publishing === 'always')
    return err(
      issue(
        'plan',
        'publishing',
        'Every change is published at once in this shop, so there is nothing to publish.',
        'Choose “When I publish” in Settings first, if the floor is to follow a plan of its own.',
      ),
    );
  const unseen = refuseUnseen(shop, seen, machinesOf(shop));
  if (unseen) return unseen;
  const label = note === '' ? 'Publish the plan' : `Publish the plan: ${note}`;
  const changed = unpublishedChanges(shop).size > 0;
  return ok({ label, changes: changed ? publishing(shop) : [] });
}

/**
 * What changing between "at once" and "by hand" does to what is published: by hand begins with the plan as it stands, so
 * that nothing moves on the floor; at once leaves nothing published beside the plan.
 */
export function publishingChanges(shop: Shop, { publishing: next }: Settings): RowChange[] {
  if (next === shop.settings.publishing) return [];
  return next === 'byHand' ? publishing(shop) : shop.published.map((row) => change('published', row, null));
}

function publishing(shop: Shop): RowChange[] {
  const { operations } = operationsOf(shop);
  const queues = completeQueues(shop, operations);
  return [...queueChanges(shop, operations, queues, machinesOf(shop)), ...publishedChanges(shop, queues)];
}

const machinesOf = ({ machine }: Shop): string[] => machine.map(({ id }) => id);

/** Row changes that make these the published queues; those that are so already are left alone. */
function publishedChanges(shop: Shop, queues: Queues): RowChange[] {
  const stored = new Map(shop.published.map((row) => [row.id, row]));
  return shop.machine.flatMap(({ id }) => {
    const before = stored.get(id) ?? null;
    const operations = [...(queues[id] ?? [])];
    return before && before.operations.join() === operations.join()
      ? []
      : [change('published', before, { id, operations, revision: 0 })];
  });
}

/**
 * What happened at a machine changes the order there for floor and paper too, though nothing is published by it.
 * @param moved the operation that stands elsewhere now; what was not published stands so only in front of it
 * @param reorder the machine's queue as floor and paper follow it → as it becomes
 */
export function publishedOrder(
  shop: Shop,
  machineId: string,
  moved: string,
  reorder: (queue: readonly string[]) => readonly string[],
): RowChange[] {
  if (shop.settings.publishing === 'always') return [];
  const before = shop.published.find(({ id }) => id === machineId) ?? null;
  const followed = queuesAfter(shop, operationsOf(shop).operations, publishedQueues(shop))[machineId] ?? [];
  const named = new Set(shop.published.flatMap((row) => row.operations));
  const next = reorder(followed);
  const last = next.indexOf(moved);
  const operations = next.filter((id, position) => position <= last || named.has(id));
  return [change('published', before, { id: machineId, operations, revision: 0 })];
}

/**
 * The plan becomes one that was kept. What is done since is left out, what is newer stands behind; pins of the kept plan
 * come back, others of its operations go. What is published stays.
 */
export function goBackTo(
  shop: Shop,
  { name, queues, pins, seen }: Extract<Command, { readonly do: 'plan.goBack' }>,
): Result<Edit> {
  const unseen = refuseUnseen(shop, seen, machinesOf(shop));
  if (unseen) return unseen;
  const { operations } = operationsOf(shop);
  const named = new Set(Object.values(queues).flat());
  const wanted = new Set(pins.filter((id) => operations.some((o) => o.id === id)));
  const pinned = new Set(shop.pin.map(({ id }) => id));
  return ok({
    label: `Go back to ${name}`,
    changes: [
      ...queueChanges(shop, operations, queuesAfter(shop, operations, queues), machinesOf(shop)),
      ...shop.pin.flatMap((pin) =>
        named.has(pin.id) && !wanted.has(pin.id) ? [change('pin', pin, null)] : [],
      ),
      ...[...wanted].flatMap((id) => (pinned.has(id) ? [] : [change('pin', null, { id, revision: 0 })])),
    ],
  });
}
