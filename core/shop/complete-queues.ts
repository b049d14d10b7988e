import type { ShopOperation } from './operations.ts';
import type { Shop } from './state.ts';

/**
 * The plan as it stands, made whole: the stored queues without what is finished, gone or no longer possible there, with
 * begun operations first, and every operation that no queue names yet put at the end of the queue with the least work,
 * by due date. So an imported order is on the board at once, and nothing else moves.
 * @returns per machine id (every machine of the shop), operation ids in order
 */
export function completeQueues(shop: Shop, operations: readonly ShopOperation[]): Record<string, string[]> {
  const byId = new Map(operations.map((o) => [o.id, o]));
  const queues: Record<string, string[]> = {};
  const work = new Map<string, number>();
  const placed = new Set<string>();
  const put = (machineId: string, operation: ShopOperation): void => {
    const seconds = operation.machines.find((m) => m.id === machineId)?.seconds ?? 0;
    (queues[machineId] ??= []).push(operation.id);
    work.set(machineId, (work.get(machineId) ?? 0) + seconds);
    placed.add(operation.id);
  };
  for (const machine of shop.machine) {
    queues[machine.id] = [];
    const begun = operations.filter((o) => o.started?.machineId === machine.id);
    for (const o of begun.sort((a, b) => (a.started?.at ?? 0) - (b.started?.at ?? 0))) put(machine.id, o);
  }
  for (const { id: machineId, operations: stored } of shop.queue) {
    for (const id of stored) {
      const operation = byId.get(id);
      if (operation && !placed.has(id) && operation.machines.some((m) => m.id === machineId))
        put(machineId, operation);
    }
  }
  const waiting = operations.filter((o) => !placed.has(o.id));
  for (const operation of waiting.sort((a, b) => a.order.due - b.order.due || (a.id < b.id ? -1 : 1))) {
    const [first, ...others] = operation.machines;
    if (!first) continue;
    const end = (m: { id: string; seconds: number }): number => (work.get(m.id) ?? 0) + m.seconds;
    put(others.reduce((least, m) => (end(m) < end(least) ? m : least), first).id, operation);
  }
  return queues;
}
