import type { Interval } from '../time/interval.ts';
import { union } from '../time/interval.ts';
import { addDays, startOfDay } from '../time/wall.ts';
import { instant } from '../units/brand.ts';

/**
 * The days, midnight to midnight by the shop's clock, on which an outside shop is open at all. Work there is counted in days:
 * what is sent on a Tuesday at two for three days is back on Friday at two, or on Monday where it is closed on Thursday and
 * on Saturdays and Sundays. A calendar that is open every day counts calendar days. (A day on which the clocks change has an hour more or less.)
 */
export const wholeDays = (open: readonly Interval[], timeZone: string): Interval[] =>
  union(
    open.map(({ start, end }) => ({
      start: startOfDay(instant(start), timeZone),
      end: addDays(startOfDay(instant(end - 1), timeZone), 1, timeZone),
    })),
  );
