import { whyNotYet } from '../edit/floor-commands.ts';
import { completeQueues } from '../planning/complete-queues.ts';
import { withPlan } from '../planning/followed-plan.ts';
import { hoursAround } from '../planning/machine-inputs.ts';
import { isElsewhere } from '../part/stage.ts';
import { leftAt, workedSeconds } from '../planning/started.ts';
import type { Machine } from '../shop/machine.ts';
import { operationsOf, type ShopOperation } from '../planning/operations.ts';
import { viewPlan } from '../planning/plan-view.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';
import { addDays, startOfDay } from '../time/wall.ts';
import { instant, type Instant } from '../units/brand.ts';
import type { PlanRead } from '../planning/runs.ts';
import { dispatchLists, type DispatchRow, type DispatchRun } from './dispatch.ts';

/** An operation as the person at the machine needs it. */
export interface FloorWork {
  readonly operation: ShopOperation;
  readonly row: DispatchRow;
  /** What to change on the machine before it; null when it is set up already, or has started. */
  readonly changeover: DispatchRun['changeover'];
  /** Why it cannot begin yet, a sentence; null when it can or has. */
  readonly notYet: string | null;
  /** How long it was worked on so far, in open seconds of the machine; 0 until it is under way. */
  readonly workedSeconds: number;
}

/** One machine's floor screen. */
export interface FloorView {
  readonly machine: Machine;
  /** What is under way on it; null where any number may be, as at an outside shop: there the queue says it of each. */
  readonly running: OperationRecord | null;
  /** Its queue from the first place on; the operation under way, where there is one, comes first. */
  readonly queue: readonly FloorWork[];
  /** What of the queue begins in the shop's day of `now`, and when the last of it ends; null when nothing does. */
  readonly today: { readonly operations: number; readonly pieces: number; readonly until: Instant } | null;
}

/**
 * What stands on a machine's floor screen. `running` may be of an operation that is not in the queue: its order was held
 * or cancelled after it began.
 * @returns null without such a machine
 */
export function floorView(shop: Shop, plan: PlanRead, machineId: string, now: Instant): FloorView | null {
  const list = dispatchLists(shop, plan, instant(0), instant(Number.MAX_SAFE_INTEGER)).find(
    ({ machine }) => machine.id === machineId,
  );
  if (!list) return null;
  // Where any number are at work at once, none stands in another's way.
  const under = shop.record.filter((r) => r.machineId === machineId && leftAt(r) === null);
  const running = isElsewhere(list.machine.stage) ? null : (under[0] ?? null);
  const workedOn = (id: string): number => {
    const record = under.find((r) => r.id === id);
    return record ? workedSeconds(record, now, hoursAround(shop, list.machine, record.start, now)) : 0;
  };
  const queue = list.runs.flatMap(({ rows, changeover }) =>
    rows.map((row, i) => workOf(shop, plan, row, i === 0 ? changeover : null, workedOn)),
  );
  const evening = addDays(startOfDay(now, shop.settings.timeZone), 1, shop.settings.timeZone);
  const today = queue.filter(({ row }) => row.start < evening);
  return {
    machine: list.machine,
    running,
    queue,
    today:
      today.length === 0
        ? null
        : {
            operations: today.length,
            pieces: today.reduce((sum, { row }) => sum + row.quantity, 0),
            until: instant(today.reduce<number>((last, { row }) => Math.max(last, row.end), now)),
          },
  };
}

function workOf(
  shop: Shop,
  { operations }: PlanRead,
  row: DispatchRow,
  changeover: DispatchRun['changeover'],
  workedOn: (operationId: string) => number,
): FloorWork {
  const operation = operations.get(row.operationId);
  if (!operation) throw new RangeError(`floorView: ${row.operationId} is listed but not in the shop`);
  const refusal = operation.started || operation.suspended ? null : whyNotYet(shop, operation);
  const notYet = refusal && !refusal.ok ? (refusal.issues[0]?.message ?? null) : null;
  return { operation, row, changeover, notYet, workedSeconds: workedOn(row.operationId) };
}

/**
 * An operation as it would be taken first on its machine, whatever its turn: with the changeover that the machine needs
 * from what it is set up for now, and the times that follow.
 * @param shop as `floorView` was given it
 * @returns null where it cannot be worked first
 */
export function workOutOfTurn(
  shop: Shop,
  machineId: string,
  operationId: string,
  now: Instant,
): FloorWork | null {
  const queues = completeQueues(shop, operationsOf(shop).operations);
  const others = (queues[machineId] ?? []).filter((id) => id !== operationId);
  const first = withPlan(shop, { ...queues, [machineId]: [operationId, ...others] });
  const plan = viewPlan(first, now);
  if (!plan.ok) return null;
  const view = floorView(first, plan.value, machineId, now);
  return view?.queue.find(({ operation }) => operation.id === operationId) ?? null;
}

/** Why a machine stands still now; null: it does not. Of several the one that ends last. */
export const stoppedAt = (
  { downtime }: Pick<Shop, 'downtime'>,
  machineId: string,
  now: Instant,
): Shop['downtime'][number] | null =>
  downtime
    .filter((one) => one.machineId === machineId && one.from <= now && now < one.to)
    .toSorted((a, b) => b.to - a.to)[0] ?? null;
