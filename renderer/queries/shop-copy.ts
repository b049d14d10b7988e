import { applyCommand } from '../../core/edit/apply.ts';
import type { Command } from '../../core/edit/command.ts';
import { withChanges, type RowChange } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';

/** A command that was sent and is not answered yet: the screen shows its effect already. */
interface Pending {
  readonly id: number;
  readonly command: Command;
}

/** The shop as this window holds it: the host's as far as it was told, and on top what was sent meanwhile. */
export interface ShopCopy {
  readonly epoch: string;
  readonly revision: number;
  /** The host's. */
  readonly base: Shop;
  readonly pending: readonly Pending[];
  /** What the screens draw: the host's with the pending commands. The same object while neither changes. */
  readonly shop: Shop;
}

/** What the host tells of a change: the number that the shop then has, and the changes; null: read again. */
export interface Moved {
  readonly epoch: string;
  readonly revision: number;
  readonly changes: readonly RowChange[] | null;
}

export const copyOf = (read: { epoch: string; revision: number; shop: Shop }): ShopCopy => ({
  epoch: read.epoch,
  revision: read.revision,
  base: read.shop,
  pending: [],
  shop: read.shop,
});

/**
 * The copy after a change that the host tells of. One that is known already changes nothing.
 * @returns `behind` when a change in between was missed, or the host is another: the shop must be read again
 */
export function moveOn(copy: ShopCopy, { epoch, revision, changes }: Moved): ShopCopy | 'behind' {
  if (epoch === copy.epoch && revision <= copy.revision) return copy;
  if (epoch !== copy.epoch || revision !== copy.revision + 1 || changes === null) return 'behind';
  return withPending({ ...copy, revision, base: withChanges(copy.base, changes) }, copy.pending);
}

/** A command is on its way: the screens show what it will do, as far as can be told here. */
export const send = (copy: ShopCopy, id: number, command: Command): ShopCopy =>
  withPending(copy, [...copy.pending, { id, command }]);

/** A command was answered: what it did is in the host's changes, or it was refused and did nothing. */
export const settle = (copy: ShopCopy, id: number): ShopCopy =>
  copy.pending.some((one) => one.id === id)
    ? withPending(
        copy,
        copy.pending.filter((one) => one.id !== id),
      )
    : copy;

/** The newly read shop in place of an older copy; what is on its way stays on top. */
export const readAgain = (
  copy: ShopCopy | undefined,
  read: { epoch: string; revision: number; shop: Shop },
): ShopCopy => withPending(copyOf(read), copy?.pending ?? []);

function withPending(copy: ShopCopy, pending: readonly Pending[]): ShopCopy {
  const shop = pending.reduce((so, { command }) => {
    const edit = applyCommand(so, command);
    return edit.ok ? withChanges(so, edit.value.changes) : so;
  }, copy.base);
  return { ...copy, pending, shop };
}
