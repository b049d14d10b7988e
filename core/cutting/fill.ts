import { type Column, type Cover, type Use } from './cover.ts';
import type { Rest } from './relaxation.ts';

/** A further column is taken at once when it yields at least this share of the best one. */
const nearlyAsGood = 0.98;

/**
 * Covers the rest stock piece by stock piece, each time with the column worth most per unit of cost, used as often as
 * it fits (once, when only with some pieces left out). With values equal to lengths this is the minimum-bin-slack rule; with dual values it completes a rounding.
 * Source of the rule: J. N. D. Gupta and J. C. Ho, Production Planning & Control 10 (1999) 598-603.
 * @returns null when the stock runs out
 */
export function fillByValue<T>(cover: Cover<T>, rest: Rest, values: readonly number[]): Use<T>[] | null {
  const wanted = rest.wanted.slice();
  const available = rest.available.slice();
  const uses: Use<T>[] = [];
  while (wanted.some((pieces) => pieces > 0)) {
    const gone = available.flatMap((left, at) => (left === 0 ? [at] : []));
    const { columns } = cover.price(
      values,
      wanted,
      null,
      'quick',
      gone.length > 0 ? new Set(gone) : undefined,
    );
    const first = richest(columns, values, wanted, available);
    if (!first) return null;
    // The pricing's further columns of that stock share no piece with it: nearly as good, they need no pricing again.
    const next = columns.filter(
      (column) => column !== first && column.stock === first.stock && column.use === first.use,
    );
    const best = rate(first, values, wanted);
    for (const column of [first, ...next]) {
      const count = timesIn(column, wanted, available);
      if (column !== first && (count < 1 || rate(column, values, wanted) < nearlyAsGood * best)) continue;
      uses.push({ column, count: Math.max(1, count) });
      take(column, Math.max(1, count), wanted, available);
    }
  }
  return uses;
}

/** Takes a column's pieces and stock off what is wanted and available, in place. */
export function take(
  column: Column,
  count: number,
  wanted: number[],
  available: (number | null)[],
  balancesFrom = Infinity,
): void {
  for (const [item, pieces] of column.pieces) {
    const left = (wanted[item] as number) - pieces * count;
    wanted[item] = item >= balancesFrom ? left : Math.max(0, left);
  }
  const left = available[column.stock];
  if (left != null) available[column.stock] = left - column.use * count;
}

/** How often a column fits without cutting a piece too many. */
function timesIn(column: Column, wanted: readonly number[], available: readonly (number | null)[]): number {
  const byDemand = column.pieces.map(([item, pieces]) => Math.floor((wanted[item] as number) / pieces));
  return Math.min(...byDemand, Math.floor((available[column.stock] ?? Infinity) / column.use));
}

/** Value of the pieces still wanted, per unit of cost. */
const rate = (column: Column, values: readonly number[], wanted: readonly number[]): number =>
  column.pieces.reduce(
    (sum, [item, count]) => sum + Math.min(count, wanted[item] as number) * (values[item] as number),
    0,
  ) / Math.max(column.cost, 1e-9);

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
    const own = rate(column, values, wanted);
    if (own > most * (1 + 1e-12)) {
      most = own;
      best = column;
    }
  }
  return best;
}
