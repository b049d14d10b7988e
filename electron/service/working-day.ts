import { addDays } from '../../core/time/wall.ts';
import { openIntervals } from '../../core/time/working-time.ts';
import type { Instant } from '../../core/units/brand.ts';
import type { Store } from '../db/open.ts';

/** Whether any machine is open, by its calendar, on the day that begins at `day`. */
export const isWorkingDay = (store: Store, day: Instant, timeZone: string): boolean =>
  store.run('look for a working day', ({ rows }) => {
    const used = new Set(rows.read('machine').map(({ calendarId }) => calendarId));
    return rows
      .read('calendar')
      .filter(({ id }) => used.has(id))
      .some((calendar) => openIntervals(calendar, [], timeZone, day, addDays(day, 1, timeZone)).ok);
  });
