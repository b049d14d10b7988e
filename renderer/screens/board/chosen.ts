import type { ShopOperation } from '../../../core/planning/operations.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { ScheduledOperation } from '../../../core/schedule/problem.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { findBar } from '../../gantt/drop.ts';
import type { Bar, Lane } from '../../gantt/lanes.ts';

/** The operation that is selected on the board. */
export interface Chosen {
  readonly shop: Shop;
  readonly plan: PlanView;
  readonly lanes: readonly Lane[];
  readonly bar: Bar;
  readonly lane: Lane;
  readonly operation: ShopOperation;
  readonly scheduled: ScheduledOperation;
}

/** Everything about the selected operation in one place; null when it is not on the board any more. */
export function chosenOf(
  shop: Shop,
  plan: PlanView,
  lanes: readonly Lane[],
  selected: string | null,
): Chosen | null {
  const found = findBar(lanes, selected);
  const operation = selected === null ? undefined : plan.operations.get(selected);
  const scheduled = plan.schedule.operations.find((o) => o.operation === selected);
  const lane = found ? lanes[found.lane] : undefined;
  return found && lane && operation && scheduled
    ? { shop, plan, lanes, bar: found.bar, lane, operation, scheduled }
    : null;
}
