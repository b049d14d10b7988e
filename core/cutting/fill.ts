import { type Column, type Cover, type Use } from './cover.ts';
import type { Rest } from './relaxation.ts';

/**
 * Covers the rest stock piece by stock piece, each time with the column worth most per unit of cost, used as often as
 * it fits. With values equal to lengths this is the minimum-bin-slack rule; with dual values it completes a rounding.
 * Source of the rule: J. N. D. Gupta and J. C. Ho, Production Planning & Control 10 (1999) 598-603.
 * @returns null when the stock runs out
 */
export function fillByValue<T>(cover: Cover<T>, rest: Rest, values: readonly number[]): Use<T>[] | null {
  const wanted = rest.wanted.slice();
  const available = rest.available.slice();
  const uses: Use<T>[] = [];
  while (wanted.some((pieces) => pieces > 0)) {
    const column = richest(cover.price(values, wanted, null, 'quick').columns, values, wanted, available);
    if (!column) return null;
    const count = timesIn(column, wanted, available);
    uses.push({ column, count });
    take(column, count, wanted, available);
  }
  return uses;
}

/** Takes a column's pieces and stock off what is wanted and available, in place. */
export function take(column: Column, count: number, wanted: number[], available: (number | null)[]): void {
  for (const [item, pieces] of column.pieces)
    wanted[item] = Math.max(0, (wanted[item] as number) - pieces * count);
  const left = available[column.stock];
  if (left != null) available[column.stock] = left - column.use * count;
}

/** How often a column fits without cutting a piece too many; once when it fits only with some pieces left out. */
function timesIn(column: Column, wanted: readonly number[], available: readonly (number | null)[]): number {
  const byDemand = Math.min(
    ...column.pieces.map(([item, pieces]) => Math.floor((wanted[item] as number) / pieces)),
  );
  return Math.max(1, Math.min(byDemand, Math.floor((available[column.stock] ?? Infinity) / column.use)));
}

function richest<T>(
  columns: readonly Column<T>[],
  values: readonly number[],
  wanted: readonly number[],
  available: readonly (number | null)[],
): Column<T> | undefined {
  let best: Column<T> | undefined;
  let most = 0;
  for (const column of columns) {
    if (column.use > (available[column.stock] ?? Infinity)) continue;
    const value = column.pieces.reduce(
      (sum, [item, count]) => sum + Math.min(count, wanted[item] as number) * (values[item] as number),
      0,
    );
    const rate = value / Math.max(column.cost, 1e-9);
    if (rate > most * (1 + 1e-12)) {
      most = rate;
      best = column;
    }
  }
  return best;
}
