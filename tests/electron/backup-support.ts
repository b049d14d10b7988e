import { dirname, join } from 'node:path';
import { instant } from '../../core/units/brand.ts';
import type { Store } from '../../electron/db/open.ts';
import { Backups } from '../../electron/service/backups.ts';
import type { Clock } from '../../electron/service/clock.ts';
import { anOrder, NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { keptPushes, memoryLog, storeWith, tempFolder } from './support.ts';

/** A shop with its backups, the clock in hand. */
export function startBackups(shop = anEverythingShop()) {
  const file = join(tempFolder(), 'shop.db');
  const store = storeWith(shop, file);
  let now = NOW;
  const clock: Clock = { now: () => now, fixed: false };
  const pushes = keptPushes();
  const backups = new Backups({ store, clock, pushes, log: memoryLog() });
  const later = (seconds: number) => (now = instant(now + seconds));
  return { file, folder: join(dirname(file), 'backups'), store, clock, pushes, backups, later };
}

/** Something is entered. */
export const put = (store: Store, id: string) =>
  store.run('put', ({ rows }) => rows.put('order', anOrder({ id })));
export const orders = (store: Store) =>
  store.run('read', ({ rows }) => rows.read('order')).map(({ id }) => id);
