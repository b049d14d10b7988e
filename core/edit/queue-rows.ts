import { completeQueues, keptOrder } from '../planning/complete-queues.ts';
import type { ShopOperation } from '../planning/operations.ts';
import type { Queues } from '../schedule/problem.ts';
import { change, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';

type Row = Shop['queue'][number];

/**
 * Row changes after which the plan is `given`, and nothing jumps. A row is left alone where the plan is so without a
 * change of it, though it may still name what is finished by now: whoever saw that queue has seen it as it is.
 * @param operations what is open (`operationsOf`)
 * @param given every open operation once, by machine
 * @param named machines whose rows are to name their operations, each of them and no other open one, so that nothing that
 *   comes in later gets before one; on others, what no row names may stay so
 */
export function queueChanges(
  shop: Shop,
  operations: readonly ShopOperation[],
  given: Queues,
  named: readonly string[],
): RowChange[] {
  const queues = keptOrder(shop, given);
  const stored = new Map(shop.queue.map((row) => [row.id, row]));
  const wanted = (id: string): Row => ({ id, operations: [...(queues[id] ?? [])], revision: 0 });
  const open = new Set(operations.map(({ id }) => id));
  const names = (id: string) => stored.get(id)?.operations.filter((operation) => open.has(operation)) ?? [];
  const written = new Set(named.filter((id) => !sameSet(names(id), queues[id] ?? [])));
  for (;;) {
    const rows = shop.machine.flatMap(({ id }) => (written.has(id) ? wanted(id) : (stored.get(id) ?? [])));
    const plan = completeQueues({ ...shop, queue: rows }, operations);
    const off = shop.machine.filter(({ id }) => !written.has(id) && !same(plan[id] ?? [], queues[id] ?? []));
    if (off.length === 0) break;
    for (const { id } of off) written.add(id);
  }
  return shop.machine.flatMap(({ id }) => {
    const before = stored.get(id) ?? null;
    const row = wanted(id);
    if (!written.has(id) || same(before?.operations ?? [], row.operations)) return [];
    return [change('queue', before, row)];
  });
}

const sameSet = (a: readonly string[], b: readonly string[]): boolean => {
  const all = new Set([...a, ...b]);
  return all.size === a.length && all.size === b.length;
};

const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((x, i) => x === b[i]);
