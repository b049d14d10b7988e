import type { Shop } from '../core/shop/state.ts';
import { shiftDate, wallParts, wallSeconds } from '../core/time/wall.ts';
import type { Instant } from '../core/units/brand.ts';
import { readAnchor, readCatalogue, readOrders, readRecords, readSettings } from './read.ts';

/**
 * The demo shop as rows of every kind, its queues empty. All dates move by the same number of whole weeks, so that the
 * data's Monday becomes the Monday of the week that holds `now` in the shop's zone; times on the wall stay as they are,
 * across a change of the clocks too.
 * @param folder a folder like demo-data/shop or demo-data/small
 * @throws Error or ZodError when a file of the folder is missing or wrong: our own data, so a bug
 */
export function loadDemo(folder: string, now: Instant): Shop {
  const settings = readSettings(folder);
  const { date, weekday } = wallParts(now, settings.timeZone);
  const monday = shiftDate(date, 1 - weekday);
  const shiftDays = (wallSeconds(monday, '00:00') - wallSeconds(readAnchor(folder), '00:00')) / 86_400;
  const reading = { timeZone: settings.timeZone, units: settings.units, shiftDays };
  const catalogue = readCatalogue(folder, reading);
  const shop: Shop = {
    settings,
    ...catalogue,
    order: [],
    line: [],
    queue: catalogue.machine.map((machine) => ({ id: machine.id, operations: [], revision: 0 })),
    pin: [],
    record: readRecords(folder, 'finished.csv', reading),
  };
  return { ...shop, ...readOrders(folder, 'orders.csv', shop, shiftDays) };
}
