import { viewPlan, type PlanView } from '../../core/planning/plan-view.ts';
import type { Shop } from '../../core/shop/state.ts';
import { aLine, aQueue, aSheet, aShop, anOrder, at, NOW } from './builders.ts';

/** A shop whose lines take whole sheets, for tests of stock and deliveries. */

export const planOf = (shop: Shop): PlanView => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
};
/** When a line is sheared. */
export const startOf = (plan: PlanView, line: string): number =>
  plan.schedule.operations.find(({ operation }) => operation === `${line}:shear`)!.start;
/** Flat strips, 150 mm wide and 2540 mm long: eight a sheet. */
export const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', ...own });
export const THURSDAY = at('2026-12-03', '10:00');
export const FRIDAY = at('2026-12-04', '10:00');
/** Two sheets and three. */
export const line = [flat({ number: 1, quantity: 16 }), flat({ number: 2, quantity: 24 })];
/** Two sheets on hand. */
export const shopOf = (own: Partial<Shop>): Shop =>
  aShop({
    order: [anOrder()],
    line,
    queue: [aQueue({ operations: (own.line ?? line).map(({ id }) => `${id}:shear`) })],
    sheet: [aSheet({ onHand: 2 })],
    ...own,
  });
