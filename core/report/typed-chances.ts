import { applyCommand } from '../edit/apply.ts';
import { chances, type Chances } from '../learn/chance.ts';
import { PLAYED } from '../learn/plan-chances.ts';
import type { Spread } from '../learn/spread.ts';
import { toProblem } from '../planning/to-problem.ts';
import { ok, type Result } from '../result.ts';
import type { Queues } from '../schedule/problem.ts';
import type { OrderLine, WorkOrder } from '../shop/order.ts';
import { withChanges } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';

/** An order as it is typed, and for each of its lines the plan with that line that was offered with it. */
export interface TypedOrder {
  readonly order: WorkOrder;
  readonly lines: readonly OrderLine[];
  /** By line id; a line without one is not asked for. */
  readonly plans: Readonly<Record<string, Queues>>;
}

/** The chances of an order's lines, each in the plan that takes it in; or why there is no such plan. */
export function typedChances(
  shop: Shop,
  now: Instant,
  spread: Spread,
  { order, lines, plans }: TypedOrder,
): Result<Chances> {
  const saved = applyCommand(shop, { do: 'order.save', order, lines, removed: [], at: now });
  if (!saved.ok) return saved;
  const plan = toProblem(withChanges(shop, saved.value.changes), now);
  if (!plan.ok) return plan;
  const found: Record<string, Chances[string]> = {};
  for (const [lineId, queues] of Object.entries(plans)) {
    const played = chances(plan.value.problem, queues, spread, PLAYED);
    if (!played.ok) return played;
    found[lineId] = played.value[lineId]!;
  }
  return ok(found);
}
