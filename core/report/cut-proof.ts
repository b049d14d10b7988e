import type { CutPlan } from '../cutting/plan.ts';
import { formatMoney, type MoneyStyle } from '../units/money.ts';
import { formatPercent } from '../units/number.ts';

/**
 * How near a plan is to the best there can be, in words: "proven fewest sheets", or by how much it may be above.
 * The share is of the bound, rounded up: it never promises more than is proven.
 */
export function proofWords(
  { groups, costCents, lowerBoundCents, status, least }: CutPlan,
  style: MoneyStyle,
): string {
  const oneSize = new Set(groups.map((group) => `${group.stockId} ${group.costCents}`)).size === 1;
  // The list was chosen for less work: what is proven is said of the metal alone.
  if (status === 'optimal' && !least) return oneSize ? 'proven fewest sheets' : 'proven least stock cost';
  if (lowerBoundCents <= 0) return 'no proof yet how near it is to the least';
  const share = Math.ceil((1000 * (costCents - lowerBoundCents)) / lowerBoundCents - 1e-9) / 1000;
  return `at most ${formatPercent(share, style)} above the least there can be, ${formatMoney(lowerBoundCents, style)}`;
}
