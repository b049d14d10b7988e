import type { Spread } from '../../core/learn/spread.ts';
import { PLAYED, readBy, shopSpread } from '../../core/report/chances.ts';
import { protect } from '../../core/learn/protect.ts';
import type { OperationRecord } from '../../core/shop/plan.ts';
import type { Result } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toSearchProblem } from '../../core/planning/to-problem.ts';
import type { Instant } from '../../core/units/brand.ts';
import { valueOf } from '../refused.ts';

/** Due dates by line, null where there is none. */
export type Dues = Readonly<Record<string, number | null>>;

/** Reckons due dates pulled in by what plans like this one usually need beyond their times. */
export function pullingIn() {
  const spreadFor = spreadKeeper();
  /** @throws Refused while too little work is finished to know how it comes out */
  return (confidence: number, shop: Shop, records: readonly OperationRecord[], now: Instant): Dues => {
    const spread = valueOf(spreadFor(shop, records));
    const { problem, queues } = valueOf(toSearchProblem(shop, now));
    const { input } = valueOf(protect(problem, queues, spread, confidence, PLAYED));
    return Object.fromEntries(input.jobs.map(({ id, due }) => [id, due]));
  };
}

/** How finished work came out against the estimates of the shop as it is; a problem while there is too little of it. */
function spreadKeeper(): (shop: Shop, records: readonly OperationRecord[]) => Result<Spread> {
  let known: { of: string; spread: Result<Spread> } | null = null;
  return (shop, records) => {
    const of = JSON.stringify([records.map(({ id, revision }) => [id, revision]), readBy(shop)]);
    if (known?.of !== of) known = { of, spread: shopSpread(shop, records) };
    return known.spread;
  };
}
