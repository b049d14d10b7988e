import { isElsewhere } from '../part/stage.ts';
import { compareIds } from '../shop/row-change.ts';
import type { Calendar } from '../time/calendar.ts';
import type { ShopOperation } from './operations.ts';
import type { Shop } from '../shop/state.ts';

/**
 * The plan as it is, made whole: the stored queues without what is finished, gone or no longer possible there, with
 * started operations first, and every operation that no queue names yet put, by due date, at the end of the queue that is worked off
 * soonest by its calendar's weekly hours. So an imported order is on the board at once, and nothing else moves.
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
    const started = operations.filter((o) => o.started?.machineId === machine.id);
    for (const o of started.sort((a, b) => (a.started?.at ?? 0) - (b.started?.at ?? 0))) put(machine.id, o);
  }
  for (const { id: machineId, operations: stored } of shop.queue) {
    for (const id of stored) {
      const operation = byId.get(id);
      if (operation && !placed.has(id) && operation.machines.some((m) => m.id === machineId))
        put(machineId, operation);
    }
  }
  const weekly = new Map(
    shop.machine.map((m) => [m.id, weeklyMinutes(shop.calendar.find((c) => c.id === m.calendarId))]),
  );
  const waiting = operations.filter((o) => !placed.has(o.id));
  for (const operation of waiting.sort((a, b) => a.terms.due - b.terms.due || (a.id < b.id ? -1 : 1))) {
    const [first, ...others] = operation.machines;
    if (!first) continue;
    const end = (m: { id: string; seconds: number }): number =>
      ((work.get(m.id) ?? 0) + m.seconds) / (weekly.get(m.id) ?? 1);
    put(others.reduce((least, m) => (end(m) < end(least) ? m : least), first).id, operation);
  }
  return keptOrder(shop, queues);
}

/** Outside work has no order: it is kept in that of its ids, so that no plan ever differs from another by it alone. */
export const keptOrder = <Ids extends readonly string[]>(
  { machine }: Pick<Shop, 'machine'>,
  queues: Readonly<Record<string, Ids>>,
): Record<string, Ids> => {
  const outside = machine.filter(({ id, stage }) => isElsewhere(stage) && queues[id] !== undefined);
  const sorted = outside.map(({ id }) => [id, [...queues[id]!].sort(compareIds)]);
  return { ...queues, ...(Object.fromEntries(sorted) as Record<string, Ids>) };
};

const minutes = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
const length = (span: { start: string; end: string }): number => minutes(span.end) - minutes(span.start);

/** Open minutes of a usual week; at least one, so that a queue without shifts only comes last. */
function weeklyMinutes(calendar: Calendar | undefined): number {
  const shifts = (calendar?.shifts ?? []).map(
    (shift) =>
      shift.days.length * (length(shift) - shift.breaks.reduce((sum, pause) => sum + length(pause), 0)),
  );
  return Math.max(
    1,
    shifts.reduce((sum, open) => sum + open, 0),
  );
}
