import { Refused } from '../refused.ts';
import type { SetAside } from '../db/set-aside.ts';
import type { LivingShop } from './living-shop.ts';

/** Rows of the data file that could not be read: looked at, put back, removed for good. */
export const asideService = (living: LivingShop) => ({
  list: (): SetAside[] => living.store.run('read what was set aside', ({ rows }) => rows.aside.list()),

  /** @throws Refused while it cannot be read, or what it belongs to is missing */
  putBack(id: number): void {
    const against = living.store.run('put a row back', ({ rows }) => rows.aside.putBack(id));
    if (against !== null)
      throw new Refused('refused', `${against} It stays set aside, and nothing was changed.`);
    living.reload();
  },

  remove: (id: number): void =>
    living.store.run('remove a row set aside', ({ rows }) => rows.aside.remove(id)),
});
