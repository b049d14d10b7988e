import type { WorkOrder } from '../../core/shop/order.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Store, Work } from '../db/open.ts';
import { Refused } from '../refused.ts';

/** Entries of the stock's history that the screens show; older ones stay in the file. */
const NEWEST_MOVEMENTS = 300;
/** So long an order that is done or cancelled stays among the others; then it is found in the archive only. */
export const ARCHIVED_AFTER = 7 * 86_400;

/** Whether an order belongs to the shop as it is, not to the archive. @param now epoch seconds */
export const isLiving = ({ closedAt }: Pick<WorkOrder, 'closedAt'>, now: number): boolean =>
  closedAt === null || closedAt > now - ARCHIVED_AFTER;

/** The shop as the screens and the commands see it, read from the file. @throws Refused while the file is fresh */
export function readShop({ rows }: Work, now: number): Shop {
  const [settings] = rows.read('settings');
  if (!settings)
    throw new Refused('unavailable', 'This data file is new. Start with the demo shop or with an empty one.');
  // What others refer to comes first: a row that cannot be read takes those with it that need it.
  const base = {
    material: rows.read('material'),
    colour: rows.read('colour'),
    sheet: rows.read('sheet'),
    part: rows.read('part'),
    calendar: rows.read('calendar'),
    machine: rows.read('machine'),
    tool: rows.read('tool'),
    downtime: rows.read('downtime'),
    absence: rows.read('absence'),
  };
  const { orders, lines, records, cutLists, cutCounts } = rows.living(now - ARCHIVED_AFTER);
  return {
    settings,
    ...base,
    order: orders,
    line: lines,
    queue: rows.read('queue'),
    published: rows.read('published'),
    pin: rows.read('pin'),
    changeover: rows.read('changeover'),
    record: records,
    learned: rows.read('learned'),
    movement: rows.newestMovements(NEWEST_MOVEMENTS),
    cutList: cutLists,
    cutCount: cutCounts,
    keptList: rows.read('keptList'),
    delivery: rows.read('delivery'),
    otherName: rows.read('otherName'),
    fileLayout: rows.read('fileLayout'),
  };
}

export const recordsService = (store: Store) => ({
  finished: (before: number | null, limit: number) =>
    store.run('read records', ({ rows }) => rows.finishedRecords(before, limit)),
});
