import type { Shop } from '../../../core/shop/state.ts';
import { formatDayYearAndClock } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';
import type { FieldErrors } from '../../form/field-errors.ts';
import type { OrderEntries } from './order-entries.ts';

/** What is asked of a due date that is past, as a file's rows are asked (core/import). */
const asked = (due: number, timeZone: string): string =>
  `${formatDayYearAndClock(due, timeZone)} is past. Change it, or save once more if it is meant so.`;

/** Due dates that were set to a time before now, by the form's field; one that stood there already is no news. */
export function pastDues(
  { settings: { timeZone } }: Shop,
  current: OrderEntries,
  { order, lines }: OrderEntries,
  now: Instant,
): FieldErrors {
  const past: Record<string, string> = {};
  if (order.due < now && order.due !== current.order.due) past['order.due'] = asked(order.due, timeZone);
  lines.forEach(({ number, due }, i) => {
    const before = current.lines.find((line) => line.number === number)?.due ?? null;
    if (due !== null && due < now && due !== before) past[`lines.${i}.due`] = asked(due, timeZone);
  });
  return past;
}

/** The questions that were not asked yet in the same words. */
export const notAsked = (past: FieldErrors, before: FieldErrors): FieldErrors =>
  Object.fromEntries(Object.entries(past).filter(([field, words]) => before[field] !== words));
