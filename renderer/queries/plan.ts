import { followedShop } from '../../core/planning/followed-plan.ts';
import { viewDueDateOrder, viewPlan, type PlanView } from '../../core/planning/plan-view.ts';
import type { KnownProblem } from '../../core/planning/to-problem.ts';
import type { PlanFigures } from '../../core/planning/figures.ts';
import { lowerBound } from '../../core/schedule/bounds.ts';
import { sentence, type Result } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { instant, type Instant } from '../../core/units/brand.ts';
import { useNow, useShop } from './hooks.ts';

/** What a screen that shows the plan has to draw. */
export type PlanQuery =
  | { readonly is: 'waiting' }
  | { readonly is: 'failed'; readonly message: string }
  | { readonly is: 'ready'; readonly shop: Shop; readonly now: Instant; readonly plan: PlanView };

/** One decoded plan a shop, so that every screen and panel shares it; it is decoded again each minute. */
const plans = new WeakMap<Shop, { readonly now: Instant; readonly view: Result<PlanView> }>();

/** The plan made last: a move of the queues leaves most of it as it is. */
let lastKnown: KnownProblem | null = null;

function planOf(shop: Shop, now: Instant): Result<PlanView> {
  const known = plans.get(shop);
  if (known?.now === now) return known.view;
  const view = viewPlan(shop, now, lastKnown ?? undefined);
  if (view.ok) lastKnown = { shop, now, problem: view.value };
  plans.set(shop, { now, view });
  return view;
}

const followed = new WeakMap<Shop, Shop>();

function followedOf(shop: Shop): Shop {
  const known = followed.get(shop) ?? followedShop(shop);
  followed.set(shop, known);
  return known;
}

const asDrafted = (shop: Shop): Shop => shop;

/** The shop's plan with its times, as of the present minute: what the planner works on. */
export const usePlan = (): PlanQuery => usePlanOf(asDrafted);

/** The same with the plan that floor and paper follow: the one published last, where plans are published by hand. */
export const useFollowedPlan = (): PlanQuery => usePlanOf(followedOf);

function usePlanOf(made: (shop: Shop) => Shop): PlanQuery {
  const { data: read, error } = useShop();
  const minute = Math.floor(useNow() / 60) * 60;
  if (error) return { is: 'failed', message: error.message };
  if (!read) return { is: 'waiting' };
  const shop = made(read);
  // What has just started on the floor did so within this minute.
  const now = instant(shop.record.reduce((last, r) => Math.max(last, r.start), minute));
  const view = planOf(shop, now);
  return view.ok
    ? { is: 'ready', shop, now, plan: view.value }
    : { is: 'failed', message: sentence(view.issues) };
}

const yardsticks = new WeakMap<PlanView['problem'], PlanFigures | null>();

/** What the plan is measured against: the figures of plain due-date order. Null where that order cannot be worked. */
export function yardstickOf(shop: Shop, plan: PlanView): PlanFigures | null {
  const known = yardsticks.get(plan.problem);
  if (known !== undefined) return known;
  const view = viewDueDateOrder(shop, plan);
  const figures = view.ok ? view.value.figures : null;
  yardsticks.set(plan.problem, figures);
  return figures;
}

const bounds = new WeakMap<PlanView['problem'], number>();

/** What no plan of this shop's work can undercut, in the unit of the plan's objective. */
export function boundOf(plan: PlanView): number {
  const known = bounds.get(plan.problem) ?? lowerBound(plan.problem).value;
  bounds.set(plan.problem, known);
  return known;
}
