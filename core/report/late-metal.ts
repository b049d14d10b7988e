import { becameLater, latenessOf } from '../planning/lateness.ts';
import { viewPlan, type PlanView } from '../planning/plan-view.ts';
import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { counted } from '../units/count.ts';
import type { Instant } from '../units/brand.ts';
import { lateSentence, someOf } from './late-words.ts';

/** Lines that wait for a delivery as planned, in the order of the lines. */
const waitingFor = ({ operations }: Pick<PlanView, 'operations'>, deliveryId: string): string[] =>
  [...operations.values()]
    .filter(
      ({ stage, metal }) => stage === 'shear' && metal?.awaited.some((one) => one.deliveryId === deliveryId),
    )
    .map(({ line }) => line.id);

/**
 * What it does to the plan as it stands when a delivery comes at another time; nothing is stored, the queues stay.
 * @param due when it comes now; epoch seconds
 * @returns sentences, the most important last; or why the plan cannot be timed
 */
export function lateMetalWords(shop: Shop, deliveryId: string, due: Instant, now: Instant): Result<string[]> {
  const moved: Shop = {
    ...shop,
    delivery: shop.delivery.map((row) => (row.id === deliveryId ? { ...row, due } : row)),
  };
  const [before, after] = [viewPlan(shop, now), viewPlan(moved, now)];
  if (!before.ok) return before;
  if (!after.ok) return after;
  const waiting = waitingFor(after.value, deliveryId);
  const [was, will] = [before, after].map(({ value }) => value.figures.lateLines);
  const later = becameLater(latenessOf(shop, before.value.schedule), latenessOf(moved, after.value.schedule));
  return ok([
    waiting.length === 0
      ? 'No line waits for it.'
      : `${someOf(waiting, 5, 'lines')} ${waiting.length === 1 ? 'waits' : 'wait'} for it.`,
    `With the order as it is, ${counted(will ?? 0, 'line is', 'lines are')} late; ${was} ${was === 1 ? 'is' : 'are'} now.`,
    lateSentence(later, 3),
  ]);
}
