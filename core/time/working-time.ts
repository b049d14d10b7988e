import type { Calendar } from './calendar.ts';
import { err, ok, issue, type Result } from '../result.ts';
import type { Instant } from '../units/brand.ts';
import { intersect, subtract, union, type Interval } from './interval.ts';
import { isTimeZone, offsetAt, shiftDate, toInstant, wallParts, wallSeconds } from './wall.ts';
import { DAY } from '../units/duration.ts';

interface Day {
  readonly date: string;
  /** 1 Monday … 7 Sunday. */
  readonly weekday: number;
  readonly at: (clock: string) => number;
}

/**
 * The shop's days from the one before `from` to the one after `to`. Asking the zone for its offset is the slow part, so
 * it is asked once a day; only days near a change of the clocks go the long way through `toInstant`.
 */
function daysAround(from: Instant, to: Instant, timeZone: string): Day[] {
  const first = shiftDate(wallParts(from, timeZone).date, -1);
  const start = wallSeconds(first, '00:00');
  const count = Math.ceil((to - from) / DAY) + 3;
  const offset = (day: number): number => offsetAt(start + day * DAY, timeZone);
  const window = [offset(-1), offset(0), offset(1)];
  const days: Day[] = [];
  for (let d = 0; d < count; d += 1) {
    window.push(offset(d + 2));
    const midnight = start + d * DAY;
    const date = new Date(midnight * 1000).toISOString().slice(0, 10);
    const weekday = ((new Date(midnight * 1000).getUTCDay() + 6) % 7) + 1;
    const steady = window[0];
    const quiet = window.every((o) => o === steady);
    const at = (clock: string): number =>
      quiet && steady !== undefined ? wallSeconds(date, clock) - steady : toInstant(date, clock, timeZone);
    days.push({ date, weekday, at });
    window.shift();
  }
  return days;
}

const spanOn = (day: Day, span: { start: string; end: string }): Interval => ({
  start: day.at(span.start),
  end: day.at(span.end),
});

/** Shifts less their own breaks, overlapping shifts merged, closed days left out. */
function regularHours(calendar: Calendar, days: readonly Day[]): Interval[] {
  const closed = (date: string): boolean => calendar.closures.some((c) => c.from <= date && date <= c.to);
  return union(
    days
      .filter((day) => !closed(day.date))
      .flatMap((day) =>
        calendar.shifts
          .filter((shift) => shift.days.includes(day.weekday))
          .flatMap((shift) => subtract([spanOn(day, shift)], union(shift.breaks.map((b) => spanOn(day, b))))),
      ),
  );
}

function overtimeHours(calendar: Calendar, days: readonly Day[]): Interval[] {
  const byDate = new Map(days.map((day) => [day.date, day]));
  return calendar.overtime.flatMap((extra) => {
    const day = byDate.get(extra.date);
    return day === undefined ? [] : [spanOn(day, extra)];
  });
}

interface Hours {
  readonly range: string;
  readonly hours: readonly Interval[];
}

/** The hours of a calendar last asked for: machines share calendars, and a year of days takes long to work out. */
const lastHours = new WeakMap<Calendar, Hours>();

/** Open hours by the calendar, of whole days, in all of [from, to) and some around it. */
function hoursAround(calendar: Calendar, timeZone: string, from: Instant, to: Instant): readonly Interval[] {
  const range = `${from} ${to} ${timeZone}`;
  const known = lastHours.get(calendar);
  if (known?.range === range) return known.hours;
  const days = daysAround(from, to, timeZone);
  const hours = union([...regularHours(calendar, days), ...overtimeHours(calendar, days)]);
  lastHours.set(calendar, { range, hours });
  return hours;
}

/**
 * When a machine is open between two instants: its calendar's shifts less breaks and closures, plus overtime (which
 * holds even on a closed day), less the machine's downtimes. A break is taken out of its own shift only: a second
 * shift that runs through it keeps the machine open. On the days when the clocks change a shift keeps its wall-clock
 * times, so it may be an hour shorter or longer (see `toInstant`).
 * @param downtimes the machine's own, any order, may overlap
 * @param timeZone IANA name
 * @param from, to [from, to)
 * @returns ascending, disjoint, not touching, inside [from, to); or a problem when the zone is unknown, the range is
 *   empty, or nothing is open in it
 */
export function openIntervals(
  calendar: Calendar,
  downtimes: readonly { readonly from: number; readonly to: number }[],
  timeZone: string,
  from: Instant,
  to: Instant,
): Result<Interval[]> {
  const subject = `calendar ${calendar.name}`;
  if (!isTimeZone(timeZone)) {
    return err(
      issue(
        'shop settings',
        'timeZone',
        `The time zone "${timeZone}" is not known.`,
        'Choose one like America/Chicago.',
      ),
    );
  }
  if (!(from < to)) {
    return err(
      issue(subject, 'range', 'The span of time to plan ends before it begins.', 'Choose a later end.'),
    );
  }
  const inRange = intersect(hoursAround(calendar, timeZone, from, to), [{ start: from, end: to }]);
  if (inRange.length === 0) {
    return err(
      issue(
        subject,
        'shifts',
        `The calendar ${calendar.name} has no open hours in the span to plan.`,
        'Add a shift or overtime, or shorten a closure.',
      ),
    );
  }
  const open = subtract(inRange, union(downtimes.map((d) => ({ start: d.from, end: d.to }))));
  if (open.length > 0) return ok(open);
  return err(
    issue(
      subject,
      'downtime',
      `Downtime covers every open hour of the calendar ${calendar.name} in the span to plan.`,
      'Shorten the downtime, or plan further ahead.',
    ),
  );
}
