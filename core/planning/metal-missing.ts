import type { Shop } from '../shop/state.ts';
import { metalOf } from './lots.ts';
import type { MetalCover } from './metal-cover.ts';
import type { ShopOperation } from './operations.ts';
import type { ShopProblem } from './to-problem.ts';

/** A line that cannot be sheared from what lies in the shop. */
export interface MetalMissing extends Pick<MetalCover, 'awaited' | 'missing'> {
  /** Its shear operation. */
  readonly operation: ShopOperation;
  /**
   * `missing`: neither stock nor deliveries have enough. `overdue`: a delivery that it needs should have come and was not
   * received. `awaited`: what it needs is on its way.
   */
  readonly is: 'missing' | 'overdue' | 'awaited';
}

const WORST_FIRST = ['missing', 'overdue', 'awaited'] as const;

/**
 * The lines whose metal is not there, by stock as counted, expected deliveries and the order of the plan: what lacks metal
 * first, then what waits. First fit on simulated sheets decides (core/planning/lot-sheets.ts), so a cut list may do with less.
 * @param plan operations and queues as planned
 * @param now a delivery that was due before is overdue; epoch seconds
 */
export function metalMissing(
  shop: Shop,
  { operations, queues }: Pick<ShopProblem, 'operations' | 'queues'>,
  now: number,
): MetalMissing[] {
  const all = [...operations.values()];
  const metal = metalOf(shop, all, queues);
  const rows = all.flatMap((operation): MetalMissing[] => {
    const own = operation.stage === 'shear' ? metal.get(operation.line.id)?.metal : undefined;
    if (!own || (own.missing === 0 && own.awaited.length === 0)) return [];
    const { missing, awaited } = own;
    const overdue = awaited.some(({ due }) => due <= now);
    return [{ operation, missing, awaited, is: missing > 0 ? 'missing' : overdue ? 'overdue' : 'awaited' }];
  });
  return rows.sort((a, b) => WORST_FIRST.indexOf(a.is) - WORST_FIRST.indexOf(b.is));
}
