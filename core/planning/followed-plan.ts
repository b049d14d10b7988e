import type { Queues } from '../schedule/problem.ts';
import type { Shop } from '../shop/state.ts';
import { completeQueues } from './complete-queues.ts';
import { operationsOf, type ShopOperation } from './operations.ts';

/** What was published, per machine; empty where the shop publishes every change at once. */
export const publishedQueues = ({ settings, published }: Shop): Queues =>
  settings.publishing === 'always' ? {} : Object.fromEntries(published.map((p) => [p.id, p.operations]));

/**
 * The shop with the queues that floor screens and paper follow. Where every change is published at once, these are the
 * queues as they are. Where plans are published by hand, they are those published last; what the planner drafts is not
 * seen. What happened, orders, hours and machines are the shop's own in both.
 */
export const followedShop = (shop: Shop): Shop =>
  shop.settings.publishing === 'always' ? shop : withPlan(shop, publishedQueues(shop));

/** The shop with a plan from another time in place of its queues. */
export const withPlan = (shop: Shop, plan: Queues): Shop => ({
  ...shop,
  queue: Object.entries(queuesAfter(shop, operationsOf(shop).operations, plan)).map(([id, operations]) => ({
    id,
    operations,
    revision: 0,
  })),
});

/**
 * A plan from another time as it can be worked now. What is done, gone, held, or no longer possible on its machine is left
 * out; what the plan does not name, because it is newer, stands behind on the machine that the shop's own queues give it,
 * in their order; started work comes first.
 * @returns per machine id (every machine of the shop), operation ids in order
 */
export function queuesAfter(
  shop: Shop,
  operations: readonly ShopOperation[],
  plan: Queues,
): Record<string, string[]> {
  const stands = new Map<string, string>();
  const byId = new Map(operations.map((o) => [o.id, o]));
  for (const [machineId, ids] of Object.entries(plan))
    for (const id of ids)
      if (!stands.has(id) && byId.get(id)?.machines.some((m) => m.id === machineId))
        stands.set(id, machineId);
  const own = completeQueues(shop, operations);
  const queue = shop.machine.map(({ id }) => ({
    id,
    operations: [
      ...(plan[id] ?? []).filter((o) => stands.get(o) === id),
      ...(own[id] ?? []).filter((o) => !stands.has(o)),
    ],
    revision: 0,
  }));
  return completeQueues({ ...shop, queue }, operations);
}

/** Open operations that no published queue names: new since, so they stand behind. Empty where nothing is published by hand. */
export function notPublished(shop: Shop): ReadonlySet<string> {
  if (shop.settings.publishing === 'always') return new Set();
  const named = new Set(shop.published.flatMap((p) => p.operations));
  return new Set(operationsOf(shop).operations.flatMap(({ id }) => (named.has(id) ? [] : [id])));
}
