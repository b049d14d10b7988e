import { wallSeconds } from '../core/time/wall.ts';

const DAY = 86_400;
/** A Monday. */
const EPOCH = wallSeconds('2000-01-03', '00:00');

const dayNumber = (date: string): number => (wallSeconds(date, '00:00') - EPOCH) / DAY;
const dateOf = (day: number): string => new Date((EPOCH + day * DAY) * 1000).toISOString().slice(0, 10);

/** Working days (Monday to Friday) before a date; a Saturday or Sunday counts as its Friday. */
const workingDay = (day: number): number => Math.floor(day / 7) * 5 + Math.min(mod(day, 7), 4);
const mod = (a: number, b: number): number => ((a % b) + b) % b;

/**
 * Moves dates so that `anchor`, a Monday, becomes `today`, counting working days only: what was due on the third working
 * day is due on the third working day again, and nothing falls on a weekend that did not. A Saturday or Sunday follows
 * its Friday; when today is one, the data begins on the Monday after.
 */
export function dateMover(anchor: string, today: string): (date: string) => string {
  const present = dayNumber(today);
  const start = mod(present, 7) > 4 ? present + 7 - mod(present, 7) : present;
  const shift = workingDay(start) - workingDay(dayNumber(anchor));
  return (date) => {
    const day = dayNumber(date);
    const moved = workingDay(day) + shift;
    const week = Math.floor(moved / 5) * 7;
    return mod(day, 7) > 4 ? dateOf(week + mod(day, 7)) : dateOf(week + mod(moved, 5));
  };
}
