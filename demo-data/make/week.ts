import {
  customer,
  dueOn,
  lineCounts,
  orderLines,
  remark,
  workday,
  type OrderHead,
  type OrderRow,
} from './orders.ts';
import type { Rng } from './rng.ts';

/** The open work of three weeks: 60 orders, 160 lines, four of them late on the Monday, five rush. */

const ORDERS = 60;
const LINES = 160;
const FIRST_NUMBER = 4101;
const ALREADY_LATE = 4;
/** 1 spreads the due dates evenly; more crowds the first days. */
const CROWDING = 1.2;
const RUSH: Readonly<Record<number, { readonly importance: number; readonly note: string }>> = {
  6: { importance: 3, note: 'Storm damage, roof is open.' },
  11: { importance: 2, note: 'Crane is booked for the next morning.' },
  17: { importance: 4, note: 'Inspector comes back this week.' },
  25: { importance: 2, note: 'Missing from an earlier delivery.' },
  38: { importance: 3, note: 'School closes for the repair only these days.' },
};

/**
 * Working day on which an order is due: the late ones on the Thursday and Friday before, the rest over days 1 to 14,
 * closer together at first, so that the first week is fuller than its hours.
 */
function dueDay(index: number): number {
  if (index < ALREADY_LATE) return index < ALREADY_LATE / 2 ? -2 : -1;
  const share = (index - ALREADY_LATE) / (ORDERS - ALREADY_LATE);
  return 1 + Math.floor(14 * share ** CROWDING);
}

/** Orders due from the second week on may still wait for coil or an approval. */
function releaseDay(due: number, rng: Rng): number | null {
  if (due < 6 || !rng.chance(0.4)) return null;
  return Math.max(1, due - rng.whole(4, 7));
}

/** The rows of orders.csv around an anchor Monday. */
export function openOrders(monday: string, rng: Rng): OrderRow[] {
  const counts = lineCounts(ORDERS, LINES, rng);
  return counts.flatMap((count, index) => {
    const due = dueDay(index);
    const release = RUSH[index] ? null : releaseDay(due, rng);
    const head: OrderHead = {
      order: String(FIRST_NUMBER + index),
      customer: customer(rng),
      'not before': release === null ? '' : `${workday(monday, release)} 06:30`,
      due: dueOn(monday, due),
      importance: RUSH[index]?.importance ?? 1,
      rush: RUSH[index] ? 'yes' : '',
      note: RUSH[index]?.note ?? remark(rng),
    };
    return orderLines(head, count, rng);
  });
}
