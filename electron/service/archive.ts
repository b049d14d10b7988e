import type { ArchivedOrder, ArchivePage } from '../../core/contract/archive.ts';
import type { Store } from '../db/open.ts';
import { Refused } from '../refused.ts';
import type { Clock } from './clock.ts';
import { ARCHIVED_AFTER } from './shop.ts';

/** So many customers are offered where one is typed: more than a shop has in a year. */
const NAMES_OFFERED = 1000;

/** Work that was closed long enough ago to be in nobody's way: found and read, never changed. */
export const archiveService = (store: Store, clock: Clock) => ({
  search: (text: string, before: ArchivePage['before'], limit: number): ArchivePage =>
    store.run('search the archive', ({ archive }) =>
      archive.search(text.trim(), clock.now() - ARCHIVED_AFTER, before, limit),
    ),

  /** Customers of orders of any age, who ordered last first. */
  customers: (): string[] =>
    store.run('look for customers', ({ archive }) => archive.customers(NAMES_OFFERED)),

  /** @throws Refused when there is no order of that number */
  order(orderId: string): ArchivedOrder {
    const found = store.run('read an order', ({ archive }) => archive.order(orderId));
    if (!found)
      throw new Refused(
        'refused',
        `There is no work order ${orderId}. Look it up by its number or customer.`,
      );
    return found;
  },
});
