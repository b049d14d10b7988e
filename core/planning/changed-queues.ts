import type { Queues } from '../schedule/problem.ts';
import { compareIds } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { completeQueues } from './complete-queues.ts';
import { publishedQueues } from './followed-plan.ts';
import { operationsOf } from './operations.ts';
import { isSuspended } from './started.ts';

/** How an operation stands otherwise in one machine's queue than it did. */
export interface QueueChange {
  readonly operation: string;
  /** `came` and `went`: from and to another machine. */
  readonly what: 'added' | 'removed' | 'earlier' | 'later' | 'came' | 'went';
  /** The other machine; null unless it came or went. */
  readonly machineId: string | null;
  /** Position in the machine's queue, from 0; null where it does not stand there. */
  readonly before: number | null;
  readonly after: number | null;
}

/** By machine, those machines left out whose queue stayed as it was. */
export type QueueChanges = ReadonlyMap<string, readonly QueueChange[]>;

/**
 * What changed from one plan to another, machine by machine. Of operations that stand in both queues of a machine as few as
 * possible are said to have moved: the longest order that both share stays.
 * @example A B C D → D A B C: D is earlier, from position 3 to 0; nothing else moved
 * @returns changes in the order of the later queue, then what is there no longer
 */
export function changedQueues(before: Queues, after: Queues): QueueChanges {
  const was = machineOf(before);
  const is = machineOf(after);
  const machines = [...new Set([...Object.keys(before), ...Object.keys(after)])].sort(compareIds);
  const all = machines.map((machine): [string, QueueChange[]] => {
    const old = positions(before[machine] ?? []);
    const next = positions(after[machine] ?? []);
    const stays = sharedOrder(
      [...old.keys()].filter((id) => next.has(id)),
      next,
    );
    const told = [...next].flatMap(([operation, at]): QueueChange[] => {
      const from = old.get(operation);
      if (from === undefined) {
        const other = was.get(operation) ?? null;
        return [{ operation, what: other ? 'came' : 'added', machineId: other, before: null, after: at }];
      }
      if (stays.has(operation)) return [];
      const what = movedEarlier(operation, stays, old, next) ? 'earlier' : 'later';
      return [{ operation, what, machineId: null, before: from, after: at }];
    });
    const gone = [...old].flatMap(([operation, from]): QueueChange[] => {
      if (next.has(operation)) return [];
      const other = is.get(operation) ?? null;
      return [{ operation, what: other ? 'went' : 'removed', machineId: other, before: from, after: null }];
    });
    return [machine, [...told, ...gone]];
  });
  return new Map(all.filter(([, changes]) => changes.length > 0));
}

const positions = (ids: readonly string[]): Map<string, number> => new Map(ids.map((id, i) => [id, i]));

const machineOf = (queues: Queues): Map<string, string> =>
  new Map(Object.entries(queues).flatMap(([machine, ids]) => ids.map((id) => [id, machine] as const)));

/** Whether an operation that moved passed more of those that stayed forwards than it had before it. */
function movedEarlier(
  id: string,
  stays: ReadonlySet<string>,
  old: ReadonlyMap<string, number>,
  next: ReadonlyMap<string, number>,
): boolean {
  const ahead = (queue: ReadonlyMap<string, number>) =>
    [...stays].filter((other) => (queue.get(other) ?? 0) < (queue.get(id) ?? 0)).length;
  return ahead(next) < ahead(old);
}

/**
 * The longest order that two queues share; of several the one whose ids come first, so that it is the same both ways.
 * @param order ids of both queues, in the order of the one
 * @param at their positions in the other
 */
function sharedOrder(order: readonly string[], at: ReadonlyMap<string, number>): Set<string> {
  const place = order.map((id) => at.get(id) ?? 0);
  const longest = order.map(() => 1);
  for (let i = order.length - 1; i >= 0; i--)
    for (let j = i + 1; j < order.length; j++)
      if (place[j]! > place[i]!) longest[i] = Math.max(longest[i]!, longest[j]! + 1);
  const kept = new Set<string>();
  let last = -1;
  for (let need = Math.max(0, ...longest); need > 0; need--) {
    let best = -1;
    for (let j = last + 1; j < order.length; j++)
      if (longest[j] === need && (last < 0 || place[j]! > place[last]!))
        if (best < 0 || compareIds(order[j]!, order[best]!) < 0) best = j;
    kept.add(order[best]!);
    last = best;
  }
  return kept;
}

/** A plan without what was begun: the floor decides what becomes of that. @param suspendedToo also what was set aside */
function withoutBegun({ record }: Shop, plan: Queues, suspendedToo: boolean): Queues {
  const begun = new Set(record.flatMap((one) => (suspendedToo || !isSuspended(one) ? [one.id] : [])));
  return Object.fromEntries(
    Object.entries(plan).map(([machine, ids]) => [machine, ids.filter((id) => !begun.has(id))]),
  );
}

/** What publishing would change for floor and paper; nothing where every change is published at once. */
export function unpublishedChanges(shop: Shop): QueueChanges {
  if (shop.settings.publishing === 'always') return new Map();
  const draft = completeQueues(shop, operationsOf(shop).operations);
  const toDo = (plan: Queues) => withoutBegun(shop, plan, false);
  return changedQueues(toDo(publishedQueues(shop)), toDo(draft));
}

/** What is otherwise in the plan that is published than in an earlier one, of what nobody has begun. */
export const changesSince = (shop: Shop, earlier: Queues): QueueChanges =>
  changedQueues(withoutBegun(shop, earlier, true), withoutBegun(shop, publishedQueues(shop), true));
