import type { Command } from '../../core/edit/command.ts';
import { completeQueues } from '../../core/planning/complete-queues.ts';
import { sumOf } from '../../core/planning/compare-plans.ts';
import { operationsOf } from '../../core/planning/operations.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import { withChanges, type RowChange } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Instant } from '../../core/units/brand.ts';
import type { StoredPlan } from '../db/plans.ts';

/** The plan as it stands, and what it comes to. */
export function planToKeep(shop: Shop, now: Instant): Pick<StoredPlan, 'queues' | 'pins' | 'figures'> {
  const view = viewPlan(shop, now);
  return {
    queues: completeQueues(shop, operationsOf(shop).operations),
    pins: shop.pin.map(({ id }) => id),
    figures: view.ok ? sumOf(view.value) : null,
  };
}

/** The plan that a command published, as it is kept; null: it published none. @param shop as it was before */
export function planPublished(
  command: Command,
  shop: Shop,
  changes: readonly RowChange[],
  now: Instant,
): Omit<StoredPlan, 'id' | 'by' | 'stepId'> | null {
  const begins = changes.some(({ kind, after }) => kind === 'published' && after !== null);
  if (command.do !== 'plan.publish' && !(command.do === 'settings.save' && begins)) return null;
  const name = command.do === 'plan.publish' ? command.note : 'As publishing by hand began';
  return { name, what: 'published', at: now, ...planToKeep(withChanges(shop, changes), now) };
}
