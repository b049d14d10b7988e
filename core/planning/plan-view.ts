import { decode } from '../schedule/decode.ts';
import type { Schedule, ScheduledOperation } from '../schedule/problem.ts';
import { dispatch } from '../schedule/rules/dispatch.ts';
import { dueDateRule } from '../schedule/rules/edd.ts';
import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { toProblem, type KnownProblem, type ShopProblem } from './to-problem.ts';
import type { Instant } from '../units/brand.ts';
import { figuresOf, type PlanFigures } from './figures.ts';
import { linesLeftOut } from './left-out.ts';

/** The plan with its times, ready to be shown. */
export interface PlanView extends ShopProblem {
  readonly schedule: Schedule;
  readonly figures: PlanFigures;
}

/**
 * The shop's plan decoded at an instant: what the board, the paper and the command line all show.
 * @param known as for `toProblem`
 * @returns the view, or what stops planning
 */
export function viewPlan(shop: Shop, now: Instant, known?: KnownProblem): Result<PlanView> {
  const shopProblem = toProblem(shop, now, known);
  return shopProblem.ok ? viewQueues(shop, shopProblem.value, shopProblem.value.queues) : shopProblem;
}

/** The same for other queues of the same shop, e.g. while a bar is being dragged. */
export function viewQueues(
  shop: Shop,
  shopProblem: ShopProblem,
  queues: ShopProblem['queues'],
): Result<PlanView> {
  const schedule = decode(shopProblem.problem, queues);
  if (!schedule.ok) return schedule;
  const figures = figuresOf(
    shop,
    schedule.value,
    linesLeftOut(shopProblem.unplannable).length,
    shopProblem.problem.input.now,
    workOn(shopProblem),
  );
  return ok({ ...shopProblem, queues, schedule: schedule.value, figures });
}

/** The yardstick: every machine takes its work by due date, without batching (core/schedule/rules/edd.ts). */
export function viewDueDateOrder(shop: Shop, shopProblem: ShopProblem): Result<PlanView> {
  return viewQueues(shop, shopProblem, dispatch(shopProblem.problem, dueDateRule(shopProblem.problem)));
}

/** Net work of a scheduled operation on its machine, seconds; days away are nobody's work. */
const workOn =
  ({ operations }: ShopProblem) =>
  (o: ScheduledOperation): number =>
    operations.get(o.operation)?.machines.find((m) => m.id === o.machine && m.estimate.people > 0)?.seconds ??
    0;
