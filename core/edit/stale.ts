import { err, issue, type Issue, type Result } from '../result.ts';
import type { RowKind, RowOf, Shop } from '../shop/state.ts';

/** A row as it was read, to be removed; null: it was not read. */
type Removed = { readonly id: string; readonly revision: number | null; readonly removed: true };

/**
 * What speaks against saving a row that someone else changed since it was read: their change is kept, and the issue holds
 * both versions.
 * @param current the row as it stands; null: there is none
 * @param saved the row with the revision that was read (a new one has 0, which no row that a command made has); `removed`
 *   where it is to go
 */
export function staleIssue<K extends RowKind>(
  kind: K,
  subject: string,
  current: RowOf<K> | null,
  saved: RowOf<K> | Removed,
): Issue | null {
  if (current === null ? saved.revision === 0 : saved.revision === current.revision) return null;
  const mine = 'removed' in saved ? null : saved;
  const how =
    current === null
      ? 'removed'
      : saved.revision === null
        ? 'added'
        : mine?.revision === 0
          ? 'added or changed'
          : 'changed';
  const message = `The ${subject} was ${how} meanwhile.`;
  const advice = mine
    ? 'Your entries are still on the form: look at the new version, then save again.'
    : 'It was not removed: look at the new version first.';
  return {
    ...issue(subject, 'revision', message, advice),
    conflict: { kind, id: saved.id, mine, theirs: current },
  };
}

export function refuseStale<K extends RowKind>(
  kind: K,
  subject: string,
  current: RowOf<K> | null,
  saved: RowOf<K>,
): Result<never> | null {
  const stale = staleIssue(kind, subject, current, saved);
  return stale && err(stale);
}

/** The revision of each machine's queue as it was seen; 0: it had none. */
export type SeenQueues = Readonly<Record<string, number>>;

/** The queues as this shop has them, for a command that is made from their order. */
export const seenQueues = (shop: Shop): SeenQueues =>
  Object.fromEntries(shop.machine.map(({ id }) => [id, queueRevision(shop, id)]));

const queueRevision = ({ queue }: Shop, machineId: string): number =>
  queue.find(({ id }) => id === machineId)?.revision ?? 0;

/**
 * What speaks against a command that was made from the order of these queues: someone put one in another order since.
 * What the floor reports and what comes in leaves a queue's row as it is, so it speaks against nothing; suspended work and
 * a walk-in cut do stand elsewhere in it.
 * @param seen the queues as the command's maker saw them
 * @param machineIds those that it depends on
 */
export function refuseUnseen(
  shop: Shop,
  seen: SeenQueues,
  machineIds: readonly string[],
): Result<never> | null {
  const changed = machineIds.filter((id) => (seen[id] ?? 0) !== queueRevision(shop, id));
  if (changed.length === 0) return null;
  return err(
    ...changed.map((id): Issue => {
      const name = shop.machine.find((machine) => machine.id === id)?.name ?? id;
      return {
        ...issue(
          `queue of ${name}`,
          'revision',
          `The queue of ${name} was changed meanwhile.`,
          'Yours was not done: look at the plan as it stands now.',
        ),
        conflict: {
          ...{ kind: 'queue', id, mine: null },
          theirs: shop.queue.find((queue) => queue.id === id) ?? null,
        },
      };
    }),
  );
}
