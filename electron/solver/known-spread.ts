import { readBy, shopSpread } from '../../core/learn/plan-chances.ts';
import type { Spread } from '../../core/learn/spread.ts';
import type { Result } from '../../core/result.ts';
import type { OperationRecord } from '../../core/shop/plan.ts';
import type { Shop } from '../../core/shop/state.ts';

/**
 * How finished work came out against the estimates of the shop as it is; an issue while there is too little of it. It
 * takes longer than the question it is asked for, so the process remembers it until the work or the shop is another.
 */
export function knownSpread(): (shop: Shop, records: readonly OperationRecord[]) => Result<Spread> {
  let known: { of: string; spread: Result<Spread> } | null = null;
  return (shop, records) => {
    const of = JSON.stringify([records.map(({ id, revision }) => [id, revision]), readBy(shop)]);
    if (known?.of !== of) known = { of, spread: shopSpread(shop, records) };
    return known.spread;
  };
}
