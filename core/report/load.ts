import type { ScheduledOperation } from '../schedule/problem.ts';
import type { OpenInterval } from '../schedule/working-time.ts';
import { intersect, total, union } from '../time/interval.ts';
import { addDays, startOfDay } from '../time/wall.ts';
import type { Instant } from '../units/brand.ts';

/** One machine on one day of the shop's calendar; durations in seconds. */
export interface DayLoad {
  readonly machineId: string;
  /** Midnight that begins the day, in the shop's time zone. */
  readonly day: Instant;
  /** Open hours of the day. */
  readonly capacity: number;
  readonly work: number;
  readonly changeover: number;
  /** (work + changeover) ÷ capacity; null on a closed day. */
  readonly utilisation: number | null;
}

/**
 * Load against capacity, day by day. Work and changeovers pause in closed hours, so what counts is the part of each
 * stretch that lies in open time; a machine that waits inside an operation (transfer lots) still counts as loaded.
 * @param open the machine's open hours, ascending and disjoint
 * @param operations of this machine, any order
 * @param from any instant of the first day; @param days how many days, 23 or 25 hours long where the clocks change
 */
export function loadByDay(
  machineId: string,
  open: readonly OpenInterval[],
  operations: readonly ScheduledOperation[],
  from: Instant,
  days: number,
  timeZone: string,
): DayLoad[] {
  const work = intersect(union(operations.map((o) => ({ start: o.start, end: o.end }))), open);
  const changeover = intersect(
    union(operations.map((o) => ({ start: o.changeoverStart, end: o.start }))),
    open,
  );
  const rows: DayLoad[] = [];
  let day = startOfDay(from, timeZone);
  for (let i = 0; i < days; i++) {
    const next = addDays(day, 1, timeZone);
    const today = [{ start: day, end: next }];
    const capacity = total(intersect(open, today));
    const busy = total(intersect(work, today));
    const changing = total(intersect(changeover, today));
    const utilisation = capacity > 0 ? (busy + changing) / capacity : null;
    rows.push({ machineId, day, capacity, work: busy, changeover: changing, utilisation });
    day = next;
  }
  return rows;
}
