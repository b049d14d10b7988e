import { toSearchProblem } from '../planning/to-problem.ts';
import { ok, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';
import { PLAYED } from './plan-chances.ts';
import { protect } from './protect.ts';
import type { Spread } from './spread.ts';

/** Due dates by line, null where there is none. */
export type Dues = Readonly<Record<string, number | null>>;

/**
 * Due dates pulled in by what plans like this one usually need beyond their times, so that planned to them lines come
 * out by their own dates with this confidence.
 * @param spread how finished work came out against the estimates of the shop as it is
 * @returns or why there are none: the plan cannot be timed
 */
export function pulledIn(shop: Shop, spread: Spread, confidence: number, now: Instant): Result<Dues> {
  const asked = toSearchProblem(shop, now);
  if (!asked.ok) return asked;
  const protectedOnes = protect(asked.value.problem, asked.value.queues, spread, confidence, PLAYED);
  if (!protectedOnes.ok) return protectedOnes;
  return ok(Object.fromEntries(protectedOnes.value.input.jobs.map(({ id, due }) => [id, due])));
}
