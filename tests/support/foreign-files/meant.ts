/**
 * Order lines as the people meant who then wrote them into files of their own. Nothing here, and nothing that writes
 * such a file, is shared with what reads it: lengths are counted in the writer's own steps, days are three numbers.
 */

/** A day of the calendar. */
export interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** A length as a whole number of small steps, so that what is written and what is meant cannot drift apart. */
export interface Meant {
  readonly steps: number;
  /** One step in millimetres: 0.1, or 25.4 / 16. */
  readonly stepMm: number;
}

export interface MeantLine {
  readonly order: string;
  /** Its number in the order, from 1. */
  readonly line: number;
  readonly customer: string;
  readonly part: string;
  /** Whole pieces. */
  readonly quantity: number;
  readonly gauge: string;
  readonly colour: string;
  readonly length: Meant;
  /** Nothing is made of it earlier; always before the due date. */
  readonly release: Day;
  readonly due: Day;
  /** Minutes after midnight; null: no time is written. */
  readonly dueMinutes: number | null;
  readonly note: string;
}

export const lengthMm = ({ steps, stepMm }: Meant): number => steps * stepMm;

const two = (value: number): string => String(value).padStart(2, '0');

/** "2026-12-04". */
export const iso = ({ year, month, day }: Day): string => `${year}-${two(month)}-${two(day)}`;

/** "14:05". */
export const clock = (minutes: number): string => `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const daysIn = (year: number, month: number): number =>
  month === 2 && year % 4 === 0 ? 29 : MONTH_DAYS[month - 1]!;

/** So many days later, counted on the fingers (for the years 2001 to 2099). */
export function later({ year, month, day }: Day, days: number): Day {
  const next = { year, month, day };
  for (let k = 0; k < days; k++) {
    next.day += 1;
    if (next.day > daysIn(next.year, next.month)) {
      next.day = 1;
      next.month += 1;
    }
    if (next.month > 12) {
      next.month = 1;
      next.year += 1;
    }
  }
  return next;
}

/** 0 is Sunday. Counted from 2 November 2026, a Monday. */
export function weekday(day: Day): number {
  let at: Day = { year: 2026, month: 11, day: 2 };
  for (let k = 1; k < 2000; k++) {
    if (iso(at) === iso(day)) return k % 7;
    at = later(at, 1);
  }
  throw new RangeError(`weekday: ${iso(day)} is not after October 2026`);
}
