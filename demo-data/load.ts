import type { Shop } from '../core/shop/state.ts';
import { wallParts } from '../core/time/wall.ts';
import type { Instant } from '../core/units/brand.ts';
import { dateMover } from './move-dates.ts';
import { readAnchor, readCatalogue, readOrders, readRecords, readSettings } from './read.ts';

/**
 * The demo shop as rows of every kind, its queues empty. All dates move by working days, so that the data's Monday is the
 * day of `now` in the shop's zone (or the Monday after a weekend) and the shop is as busy whenever it is opened; times on
 * the wall stay as they are, across a change of the clocks too.
 * @param folder a folder like demo-data/shop or demo-data/small
 * @throws Error or ZodError when a file of the folder is missing or wrong: our own data, so a bug
 */
export function loadDemo(folder: string, now: Instant): Shop {
  const settings = readSettings(folder);
  const move = dateMover(readAnchor(folder), wallParts(now, settings.timeZone).date);
  const reading = { timeZone: settings.timeZone, units: settings.units, move };
  const catalogue = readCatalogue(folder, reading);
  const shop: Shop = {
    settings,
    ...catalogue,
    order: [],
    line: [],
    queue: catalogue.machine.map((machine) => ({ id: machine.id, operations: [], revision: 0 })),
    published: [],
    changeover: [],
    pin: [],
    record: readRecords(folder, 'finished.csv', reading),
    learned: [],
    movement: [],
    cutList: [],
    cutCount: [],
    otherName: [],
    keptList: [],
    delivery: [],
    fileLayout: [],
  };
  return { ...shop, ...readOrders(folder, 'orders.csv', shop, move) };
}
