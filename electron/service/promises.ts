import type { Promised } from '../../core/planning/answers.ts';
import { applyCommand } from '../../core/edit/apply.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import { promiseDate, type DateOffer } from '../../core/schedule/promise.ts';
import type { OrderLine, WorkOrder } from '../../core/shop/order.ts';
import { sentence } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import type { Instant } from '../../core/units/brand.ts';
import { valueOf } from '../refused.ts';


/** Lines of one order that get a date while it is typed. */
const PROMISED = 20;
const BEYOND = `Dates are looked up for the first ${PROMISED} lines of an order. Save it, and the board shows when this one is done.`;

/**
 * The dates that can be promised for an order as typed, line by line, so that the caller can stop in between.
 * @throws Refused for an order that could not be saved, or a plan that cannot be timed
 */
export function* promisesOf(
  shop: Shop,
  order: WorkOrder,
  lines: readonly OrderLine[],
  now: Instant,
): Generator<Promised, void> {
  const { changes } = valueOf(applyCommand(shop, { do: 'order.save', order, lines }));
  const { problem, queues, unplannable } = valueOf(toSearchProblem(withChanges(shop, changes), now));
  for (const [i, { id: lineId }] of lines.entries()) {
    const none = { lineId, safe: null, earlier: [] };
    if (i >= PROMISED) {
      yield { ...none, message: BEYOND };
      continue;
    }
    const found = promiseDate(problem, queues, lineId);
    if (found.ok) {
      const { safe, earlier } = found.value;
      const placed = safe && { ...offerOf(safe), queues: safe.queues };
      yield { lineId, safe: placed, earlier: earlier.map(offerOf), message: null };
      continue;
    }
    const own = unplannable.filter(({ subject }) => subject === `line ${lineId}`);
    yield { ...none, message: sentence(own.length > 0 ? own : found.issues) };
  }
}

const offerOf = ({ end, makesLate }: DateOffer) => ({ end, makesLate });
