import { applyCommand } from '../edit/apply.ts';
import type { Promised } from '../planning/answers.ts';
import { toSearchProblem } from '../planning/to-problem.ts';
import { ok, sentence, type Result } from '../result.ts';
import { promiseDate, type DateOffer } from '../schedule/promise.ts';
import type { OrderLine, WorkOrder } from '../shop/order.ts';
import { withChanges } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';

/** Lines of one order that get a date while it is typed. */
const PROMISED = 20;
const BEYOND = `Dates are looked up for the first ${PROMISED} lines of an order. Save it, and the board shows when this one is done.`;

/**
 * The dates that can be promised for an order as typed, line by line, so that the caller can stop in between.
 * @returns a line's dates at each step; or why there are none: the order could not be saved, the plan cannot be timed
 */
export function promisesOf(
  shop: Shop,
  order: WorkOrder,
  lines: readonly OrderLine[],
  now: Instant,
): Result<Iterable<Promised>> {
  const saved = applyCommand(shop, { do: 'order.save', order, lines, removed: [], at: now });
  if (!saved.ok) return saved;
  const asked = toSearchProblem(withChanges(shop, saved.value.changes), now);
  if (!asked.ok) return asked;
  const { problem, queues, unplannable } = asked.value;
  const promised = (lineId: string): Promised => {
    const found = promiseDate(problem, queues, lineId);
    if (!found.ok) {
      const own = unplannable.filter(({ subject }) => subject === `line ${lineId}`);
      return { lineId, safe: null, earlier: [], message: sentence(own.length > 0 ? own : found.issues) };
    }
    const { safe, earlier } = found.value;
    const withPlan = safe && { ...offerOf(safe), queues: safe.queues };
    return { lineId, safe: withPlan, earlier: earlier.map(offerOf), message: null };
  };
  return ok(
    (function* () {
      for (const [i, { id: lineId }] of lines.entries())
        yield i < PROMISED ? promised(lineId) : { lineId, safe: null, earlier: [], message: BEYOND };
    })(),
  );
}

const offerOf = ({ end, makesLate }: DateOffer) => ({ end, makesLate });
