import type { Schedule } from '../schedule/problem.ts';
import { termsOf } from '../shop/line-terms.ts';
import type { Shop } from '../shop/state.ts';

export interface LineLateness {
  readonly lineId: string;
  readonly orderId: string;
  /** Epoch seconds at which the line's last operation ends. */
  readonly end: number;
  readonly due: number;
  /** end − due in seconds: below zero is early. */
  readonly lateness: number;
  readonly importance: number;
}

/** Every planned line with its lateness, latest first (ties by line). */
export function latenessOf(shop: Shop, schedule: Schedule): LineLateness[] {
  const orders = new Map(shop.order.map((o) => [o.id, o]));
  const rows: LineLateness[] = [];
  for (const line of shop.line) {
    const end = schedule.ends[line.id];
    const order = orders.get(line.orderId);
    if (end === undefined || !order) continue;
    const { due, importance } = termsOf(order, line);
    rows.push({ lineId: line.id, orderId: order.id, end, due, lateness: end - due, importance });
  }
  return rows.sort((a, b) => b.lateness - a.lateness || (a.lineId < b.lineId ? -1 : 1));
}

/**
 * The part of a line's lateness that was there before the plan could do anything: from its due date to the moment the
 * plan begins at. No order of the queues saves it.
 * @param now the moment the plan begins at; epoch seconds
 * @returns seconds, from 0 to the line's whole lateness
 */
export const overdueAt = ({ end, due }: Pick<LineLateness, 'end' | 'due'>, now: number): number =>
  Math.max(0, Math.min(end, now) - due);

export interface BecameLate {
  readonly lineId: string;
  /** Seconds late before (0: on time) and after. */
  readonly before: number;
  readonly after: number;
}

/** Lines that a change made late or later, worst first: what the board names after a drag. */
export function becameLater(before: readonly LineLateness[], after: readonly LineLateness[]): BecameLate[] {
  const old = new Map(before.map((row) => [row.lineId, Math.max(0, row.lateness)]));
  return after
    .map((row) => ({
      lineId: row.lineId,
      before: old.get(row.lineId) ?? 0,
      after: Math.max(0, row.lateness),
    }))
    .filter((row) => row.after > row.before)
    .sort((a, b) => b.after - b.before - (a.after - a.before) || (a.lineId < b.lineId ? -1 : 1));
}
