import { union, type Interval } from '../time/interval.ts';
import { shiftDate, toInstant, wallParts } from '../time/wall.ts';
import { instant } from '../units/brand.ts';

/**
 * The days, midnight to midnight by the shop's clock, on which an outside shop is open at all. Work there is counted in days:
 * what is sent on a Tuesday at two for three days is back on Friday at two, or on Monday where it is closed on Thursday and
 * on Saturdays and Sundays. A calendar that is open every day counts calendar days. (A day on which the clocks change has an
 * hour more or less.)
 * @param open ascending, disjoint
 */
export function wholeDays(open: readonly Interval[], timeZone: string): Interval[] {
  const [first] = open;
  if (!first) return [];
  const days: Interval[] = [];
  let day = dayOf(wallParts(instant(first.start), timeZone).date, timeZone);
  for (const { start, end } of open) {
    while (day.end <= start) day = dayOf(day.next, timeZone);
    days.push(day);
    while (day.end < end) {
      day = dayOf(day.next, timeZone);
      days.push(day);
    }
  }
  return union(days.map((one) => ({ start: one.start, end: one.end })));
}

interface Day extends Interval {
  /** The date after it. */
  readonly next: string;
}

/** Days by zone and date: asking the zone is slow, and a plan asks for the same two years again and again. */
const known = new Map<string, Day>();

function dayOf(date: string, timeZone: string): Day {
  const key = `${timeZone} ${date}`;
  const before = known.get(key);
  if (before) return before;
  const next = shiftDate(date, 1);
  const day = { start: toInstant(date, '00:00', timeZone), end: toInstant(next, '00:00', timeZone), next };
  known.set(key, day);
  return day;
}
