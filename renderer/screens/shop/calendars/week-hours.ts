import { calendar as calendarSchema, type Calendar } from '../../../../core/time/calendar.ts';
import { sentence } from '../../../../core/result.ts';
import { intersect, total } from '../../../../core/time/interval.ts';
import { addDays, formatWallDate, startOfDay, wallParts } from '../../../../core/time/wall.ts';
import { openIntervals } from '../../../../core/time/working-time.ts';
import { instant, type Instant } from '../../../../core/units/brand.ts';

/** One day of the picture. */
export interface DayHours {
  /** "Tue 24 Nov" */
  readonly label: string;
  /** Open stretches as shares of 24 h on the wall clock, 0 to 1. */
  readonly spans: readonly { readonly from: number; readonly to: number }[];
  readonly openSeconds: number;
}

interface WeekHours {
  readonly days: readonly DayHours[];
  readonly openSeconds: number;
}

/** The Monday, at midnight, of the week that holds `at`, so many weeks on. */
export function mondayOf(at: Instant, weeks: number, timeZone: string): Instant {
  const { weekday } = wallParts(at, timeZone);
  return startOfDay(addDays(at, 7 * weeks - (weekday - 1), timeZone), timeZone);
}

/**
 * The open hours of one week of a calendar, also while it is being typed.
 * @returns the week, or a sentence: something is not filled in yet, or nothing is open
 */
export function weekHours(calendar: Calendar, monday: Instant, timeZone: string): WeekHours | string {
  if (
    !calendarSchema.shape.shifts.safeParse(calendar.shifts).success ||
    !calendarSchema.shape.overtime.safeParse(calendar.overtime).success
  )
    return 'The picture appears when every span has a start and a later end.';
  const end = addDays(monday, 7, timeZone);
  const open = openIntervals(calendar, [], timeZone, monday, end);
  if (!open.ok)
    return calendar.shifts.length === 0
      ? sentence(open.issues)
      : `Nothing is open in this week. ${sentence(open.issues)}`;
  const days = [0, 1, 2, 3, 4, 5, 6].map((day): DayHours => {
    const start = addDays(monday, day, timeZone);
    const today = intersect(open.value, [{ start, end: addDays(start, 1, timeZone) }]);
    const share = (at: number, closes: boolean): number => {
      const { hour, minute } = wallParts(instant(at), timeZone);
      const wall = (hour + minute / 60) / 24;
      return closes && wall === 0 ? 1 : wall;
    };
    return {
      label: formatWallDate(start, timeZone),
      spans: today.map((span) => ({ from: share(span.start, false), to: share(span.end, true) })),
      openSeconds: total(today),
    };
  });
  return { days, openSeconds: days.reduce((sum, day) => sum + day.openSeconds, 0) };
}
