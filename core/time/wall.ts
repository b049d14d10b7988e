import { tzOffset } from '@date-fns/tz';
import { instant, type Instant } from '../units/brand.ts';
import { DAY } from '../units/duration.ts';

/**
 * The shop's wall clock: from instants to what the clock on the wall shows and back. The time zone is an IANA name and
 * is passed in. This is the only file that writes a time for people, on screen or on paper.
 */

/** Monday first, as in ISO 8601. */
export const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

interface WallParts {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
  /** 1 Monday … 7 Sunday, as in ISO 8601. */
  readonly weekday: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  /** "2026-11-24" */
  readonly date: string;
}

/** Whether the runtime knows the zone, e.g. "America/Chicago". */
export const isTimeZone = (timeZone: string): boolean => Number.isFinite(tzOffset(timeZone, new Date(0)));

/**
 * Seconds the zone is ahead of UTC at an instant.
 * @throws RangeError on a zone the runtime does not know, or an instant that is not a number: a caller's bug
 */
export function offsetAt(at: number, timeZone: string): number {
  const minutes = tzOffset(timeZone, new Date(at * 1000));
  if (!Number.isFinite(minutes))
    throw new RangeError(`offsetAt: no offset for ${at} in time zone "${timeZone}"`);
  return Math.round(minutes * 60);
}

/**
 * The wall time counted as if the zone were UTC, in seconds.
 * @param clock "07:30"; "24:00" is the next midnight
 * @throws RangeError on a malformed date or clock, which the shop's schemas refuse earlier
 */
export function wallSeconds(date: string, clock: string): number {
  const midnight = Date.parse(`${date}T00:00:00Z`) / 1000;
  const seconds = Number(clock.slice(0, 2)) * 3600 + Number(clock.slice(3, 5)) * 60;
  if (!Number.isFinite(midnight + seconds)) throw new RangeError(`wallSeconds: "${date}" "${clock}"`);
  return midnight + seconds;
}

/** The first second at which the offset is no longer `before`, between an instant that has it and one that has not. */
function firstChange(low: number, high: number, before: number, timeZone: string): number {
  let last = low;
  let first = high;
  while (first - last > 1) {
    const middle = Math.floor((last + first) / 2);
    if (offsetAt(middle, timeZone) === before) last = middle;
    else first = middle;
  }
  return first;
}

/**
 * The instant when the clock on the wall first reaches a date and time.
 * A time that exists twice (clocks put back) is the first of the two; one that does not exist (clocks put forward, a
 * day left out) is the instant of the jump. So later wall times never come earlier, and spans that meet on the
 * clock meet in time.
 * @param date "2026-11-26"
 * @param clock "07:30"; "24:00" closes the day
 * @throws RangeError on an unknown zone or a malformed date or clock
 */
export function toInstant(date: string, clock: string, timeZone: string): Instant {
  const wall = wallSeconds(date, clock);
  const before = offsetAt(wall - DAY, timeZone);
  const after = offsetAt(wall + DAY, timeZone);
  if (before === after) return instant(wall - before);
  if (offsetAt(wall - before, timeZone) === before) return instant(wall - before);
  if (offsetAt(wall - after, timeZone) === after) return instant(wall - after);
  return instant(firstChange(wall - DAY, wall + DAY, before, timeZone));
}

/** What the wall clock shows at an instant. Throws RangeError as `offsetAt`. */
export function wallParts(at: Instant, timeZone: string): WallParts {
  const shown = new Date((at + offsetAt(at, timeZone)) * 1000);
  return {
    year: shown.getUTCFullYear(),
    month: shown.getUTCMonth() + 1,
    day: shown.getUTCDate(),
    weekday: shown.getUTCDay() === 0 ? 7 : shown.getUTCDay(),
    hour: shown.getUTCHours(),
    minute: shown.getUTCMinutes(),
    second: shown.getUTCSeconds(),
    date: shown.toISOString().slice(0, 10),
  };
}

/** "2026-11-24" plus whole days, by the calendar. */
export const shiftDate = (date: string, days: number): string =>
  new Date((wallSeconds(date, '00:00') + days * DAY) * 1000).toISOString().slice(0, 10);

/** The first instant of the shop's day that holds `at`. */
export const startOfDay = (at: Instant, timeZone: string): Instant =>
  toInstant(wallParts(at, timeZone).date, '00:00', timeZone);

/** The same time on the wall, whole days later or (negative) earlier; not always 24 h a day. */
export function addDays(at: Instant, days: number, timeZone: string): Instant {
  const { date, second } = wallParts(at, timeZone);
  return instant(toInstant(shiftDate(date, days), formatClock(at, timeZone), timeZone) + second);
}

/** "07" */
export const twoFigures = (n: number): string => String(n).padStart(2, '0');

/** "14:30" */
export function formatClock(at: Instant, timeZone: string): string {
  const { hour, minute } = wallParts(at, timeZone);
  return `${twoFigures(hour)}:${twoFigures(minute)}`;
}

/** "Tue 14:30" */
export const formatWall = (at: Instant, timeZone: string): string =>
  `${WEEKDAYS[wallParts(at, timeZone).weekday - 1]} ${formatClock(at, timeZone)}`;

/** "Tue 24 Nov" */
export function formatWallDate(at: Instant, timeZone: string): string {
  const { weekday, day, month } = wallParts(at, timeZone);
  return `${WEEKDAYS[weekday - 1]} ${day} ${MONTHS[month - 1]}`;
}

/** "Tue 24 Nov 14:30" @param at epoch seconds */
export const formatDayAndClock = (at: number, timeZone: string): string =>
  `${formatWallDate(instant(at), timeZone)} ${formatClock(instant(at), timeZone)}`;

/** "Tue 24 Nov 2026 14:30": where other years are near, so that a day needs its year. @param at epoch seconds */
export const formatDayYearAndClock = (at: number, timeZone: string): string => {
  const when = instant(at);
  return `${formatWallDate(when, timeZone)} ${wallParts(when, timeZone).year} ${formatClock(when, timeZone)}`;
};
