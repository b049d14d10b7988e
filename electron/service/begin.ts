import { join } from 'node:path';
import type { Calendar } from '../../core/time/calendar.ts';
import { USUAL_SHIFT } from '../../core/time/usual-week.ts';
import { newSettings, type Settings } from '../../core/shop/settings.ts';
import { rowKinds, type RowKind, type RowOf, type Shop } from '../../core/shop/state.ts';
import { isTimeZone } from '../../core/time/wall.ts';
import { loadDemo } from '../../demo-data/load.ts';
import type { Work } from '../db/open.ts';
import { Refused } from '../refused.ts';
import type { Clock } from './clock.ts';
import { putExport, readExport } from './export.ts';
import type { LivingShop } from './living-shop.ts';

/** A new shop needs one calendar before it can have a machine. Common practice, no source. */
const NEW_CALENDAR: Calendar = {
  id: 'day',
  name: 'Day shift',
  shifts: [USUAL_SHIFT],
  closures: [],
  overtime: [],
  revision: 0,
};

/** The first start: a fresh data file becomes the demo shop or an empty one. */
export const beginService = (living: LivingShop, clock: Clock, appFolder: string) => {
  const { store } = living;
  const fill = (put: (work: Work) => void): void => {
    store.run('begin', (work) => {
      if (!isFresh(work))
        throw new Refused('refused', 'This data file already holds a shop; it was left as it is.');
      put(work);
    });
    living.reload();
  };

  return {
    /** True until the data file holds a shop. */
    fresh: (): boolean => store.run('look for a shop', isFresh),

    demo(): void {
      const shop = loadDemo(join(appFolder, 'demo-data', 'shop'), clock.now());
      fill((work) => putShop(work, shop));
    },

    /** Everything of an export. @throws Refused with what is wrong in it */
    export(fileName: string, gzipped: Uint8Array): void {
      const whole = readExport(fileName, gzipped);
      fill((work) => putExport(work, whole));
    },

    empty(shop: Pick<Settings, 'name' | 'timeZone' | 'units' | 'decimals'>): void {
      if (!isTimeZone(shop.timeZone))
        throw new Refused(
          'bad-input',
          `“${shop.timeZone}” is not a time zone. Use a name such as America/Chicago.`,
        );
      fill(({ rows }) => {
        rows.put('settings', {
          ...newSettings,
          name: shop.name,
          timeZone: shop.timeZone,
          units: shop.units,
          decimals: shop.decimals,
        });
        rows.put('calendar', NEW_CALENDAR);
      });
    },
  };
};

const isFresh = ({ rows }: Work): boolean => rows.read('settings').length === 0;

/** Write every row of a shop into an empty data file. */
export function putShop({ rows }: Work, shop: Shop): void {
  for (const kind of Object.keys(rowKinds) as RowKind[])
    for (const row of kind === 'settings' ? [shop.settings] : shop[kind])
      rows.put(kind, row as RowOf<typeof kind>);
}
