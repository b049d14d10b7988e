import type { Shop } from '../../core/shop/state.ts';
import type { Store, Work } from '../db/open.ts';
import { Refused } from '../refused.ts';

/** Entries of the stock's history that the screens show; older ones stay in the file. */
const NEWEST_MOVEMENTS = 300;

/** The shop as the screens and the commands see it. @throws Refused while the file is fresh */
export function readShop({ rows }: Work): Shop {
  const [settings] = rows.read('settings');
  if (!settings)
    throw new Refused('unavailable', 'This data file is new. Start with the demo shop or with an empty one.');
  return {
    settings,
    material: rows.read('material'),
    colour: rows.read('colour'),
    sheet: rows.read('sheet'),
    part: rows.read('part'),
    calendar: rows.read('calendar'),
    machine: rows.read('machine'),
    downtime: rows.read('downtime'),
    absence: rows.read('absence'),
    order: rows.read('order'),
    line: rows.read('line'),
    queue: rows.read('queue'),
    published: rows.read('published'),
    pin: rows.read('pin'),
    record: rows.presentRecords(),
    learned: rows.read('learned'),
    movement: rows.newestMovements(NEWEST_MOVEMENTS),
    cutList: rows.read('cutList'),
  };
}

export const shopService = (store: Store) => ({
  read: (): Shop => store.run('read the shop', readShop),

  records: (before: number | null, limit: number) =>
    store.run('read records', ({ rows }) => rows.finishedRecords(before, limit)),
});
