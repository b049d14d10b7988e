import { applyCommand } from '../edit/apply.ts';
import type { Promised } from '../planning/answers.ts';
import { viewPlan } from '../planning/plan-view.ts';
import { toSearchProblem, type ShopProblem } from '../planning/to-problem.ts';
import { ok, sentence, type Result } from '../result.ts';
import { decode } from '../schedule/decode.ts';
import { promiseDate, type DateOffer } from '../schedule/promise.ts';
import { madeLate, shiftsBetween } from '../schedule/what-if/shifts.ts';
import type { OrderLine, WorkOrder } from '../shop/order.ts';
import { withChanges } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';

/** Lines of one order that get a date while it is typed. */
const PROMISED = 20;
const BEYOND = `Dates are looked up for the first ${PROMISED} lines of an order. Save it, and the board shows when this one is done.`;

/**
 * The dates that can be promised for an order as typed, line by line, so that the caller can stop in between. A line that
 * is in the plan already may also stay where it is, as long as what was typed makes nothing else late: the date that the
 * board shows for it is kept then, also where the line's place costs others something they would get back without it.
 * Nothing is saved by asking, so what is typed is asked about over rows that someone else has changed meanwhile too.
 * @returns a line's dates at each step; or why there are none: the order could not be saved, the plan cannot be timed
 */
export function promisesOf(
  shop: Shop,
  order: WorkOrder,
  lines: readonly OrderLine[],
  now: Instant,
): Result<Iterable<Promised>> {
  const saved = applyCommand(shop, {
    do: 'order.save',
    order: overPresent(shop.order, order),
    lines: lines.map((line) => overPresent(shop.line, line)),
    removed: [],
    at: now,
  });
  if (!saved.ok) return saved;
  const asked = toSearchProblem(withChanges(shop, saved.value.changes), now);
  if (!asked.ok) return asked;
  const { problem, queues, unplannable } = asked.value;
  const place = placesKept(shop, asked.value, order.id, now);
  const promised = (lineId: string): Promised => {
    const found = promiseDate(problem, queues, lineId);
    if (!found.ok) {
      const own = unplannable.filter(({ subject }) => subject === `line ${lineId}`);
      return { lineId, safe: null, earlier: [], message: sentence(own.length > 0 ? own : found.issues) };
    }
    const end = place(lineId);
    const moved = found.value.safe && { ...offerOf(found.value.safe), queues: found.value.safe.queues };
    const safe = end !== null && (moved === null || end < moved.end) ? { end, makesLate: [], queues } : moved;
    const earlier = found.value.earlier.filter((offer) => safe === null || offer.end < safe.end);
    return { lineId, safe, earlier: earlier.map(offerOf), message: null };
  };
  return ok(
    (function* () {
      for (const [i, { id: lineId }] of lines.entries())
        yield i < PROMISED ? promised(lineId) : { lineId, safe: null, earlier: [], message: BEYOND };
    })(),
  );
}

/** The row as if it had been typed over the one that stands. */
const overPresent = <R extends { readonly id: string; readonly revision: number }>(
  rows: readonly R[],
  row: R,
): R => ({ ...row, revision: rows.find(({ id }) => id === row.id)?.revision ?? 0 });

/**
 * Where lines end that stay where they are in the plan.
 * @returns by line, its end; null for one that was in no plan, and for all where staying makes another order's line late
 */
function placesKept(
  shop: Shop,
  { problem, queues }: ShopProblem,
  orderId: string,
  now: Instant,
): (lineId: string) => number | null {
  const before = viewPlan(shop, now);
  const after = decode(problem, queues);
  if (!before.ok || !after.ok) return () => null;
  const stood = before.value.schedule.ends;
  const { ends } = after.value;
  const own = shop.line.filter((line) => line.orderId === orderId).map(({ id }) => id);
  if (madeLate(shiftsBetween(problem, stood, ends, own)).length > 0) return () => null;
  return (lineId) => (stood[lineId] === undefined ? null : (ends[lineId] ?? null));
}

const offerOf = ({ end, makesLate }: DateOffer) => ({ end, makesLate });
