import { columnKey, type Column, type Cover, type Effort, type Peak } from './cover.ts';
import { createMaster } from './simplex.ts';

/** Columns met so far, each once. */
export interface Pool<T> {
  readonly columns: Column<T>[];
  readonly keys: Set<string>;
}

export const createPool = <T>(columns: readonly Column<T>[]): Pool<T> => {
  const pool: Pool<T> = { columns: [], keys: new Set() };
  for (const column of columns) addTo(pool, column);
  return pool;
};

/** @returns whether the column was new */
export function addTo<T>(pool: Pool<T>, column: Column<T>): boolean {
  const key = columnKey(column);
  if (column.pieces.length === 0 || pool.keys.has(key)) return false;
  pool.keys.add(key);
  pool.columns.push(column);
  return true;
}

/** What is still to be covered, and the stock still there. */
export interface Rest {
  readonly wanted: readonly number[];
  readonly available: readonly (number | null)[];
}

export const wholeOf = (cover: Cover): Rest => ({
  wanted: cover.demand,
  available: cover.stock.map((one) => one.available),
});

export interface Relaxed<T> {
  /** Columns at a positive level with their (fractional) uses, in a fixed order. */
  readonly fractional: readonly { readonly column: Column<T>; readonly level: number }[];
  readonly itemDuals: readonly number[];
  readonly stockDuals: readonly number[];
  /** No way of covering the rest costs less than this, whatever columns there are. */
  readonly bound: number;
  /** Pricing proved that no further column helps: the bound is the relaxation's value. */
  readonly converged: boolean;
  /** Pieces that no combination of columns and stock covers. */
  readonly uncovered: number;
}

/** How far the relaxation is to be solved. */
export interface RelaxEffort {
  /** Rounds of pricing, at most. */
  readonly rounds: number;
  /** Share of the cost within which the bound need not be driven any closer. */
  readonly closeEnough: number;
  /** Whether quick pricing is followed by exact pricing once it finds nothing. */
  readonly exact: boolean;
}

/**
 * Solves the relaxation by column generation, yielding after each round of pricing so that a caller can stop.
 * Sources: P. C. Gilmore and R. E. Gomory, Operations Research 9 (1961) 849-859, for the method;
 * A. A. Farley, Operations Research 38 (1990) 922-923, for the bound before convergence.
 */
export function* relax<T>(
  cover: Cover<T>,
  rest: Rest,
  pool: Pool<T>,
  effort: RelaxEffort,
): Generator<Relaxed<T>, Relaxed<T>> {
  const master = masterOf(cover, rest, pool);
  let bound = 0;
  for (let round = 1; ; round++) {
    const { itemDuals, stockDuals, fractional, cost, uncovered } = master.solve();
    // Quick pricing until it finds nothing more; only then is the exact, slower one worth its time.
    const attempts: readonly Effort[] = effort.exact ? ['quick', 'exact'] : ['quick'];
    let fresh: Column<T>[] = [];
    let tight = false;
    for (const how of attempts) {
      const priced = cover.price(itemDuals, rest.wanted, stockDuals, how);
      fresh = priced.columns.filter((column) => master.gains(column) && addTo(pool, column));
      tight = how === 'exact' && priced.peaks.every((peak) => isTight(peak, stockDuals));
      bound = Math.max(bound, lagrangeBound(itemDuals, rest, priced.peaks));
      if (fresh.length > 0) break;
    }
    const ended = fresh.length === 0;
    const now = { fractional, itemDuals, stockDuals, bound, converged: ended && tight, uncovered };
    if (ended || cost - bound <= effort.closeEnough * bound || round >= effort.rounds) return now;
    yield now;
    for (const column of fresh) master.add(column);
  }
}

const isTight = (peak: Peak, stockDuals: readonly number[]): boolean =>
  peak.bound <= peak.cost + (stockDuals[peak.stock] as number) * peak.use + 1e-6;

/** The linear programme over the rest, in terms of the cover's items and stocks. */
function masterOf<T>(cover: Cover<T>, rest: Rest, pool: Pool<T>) {
  const rows = rest.wanted.map((_, item) => item).filter((item) => (rest.wanted[item] as number) > 0);
  const rowOf = new Map(rows.map((item, row) => [item, row]));
  const lp = createMaster(
    rows.map((item) => rest.wanted[item] as number),
    rest.available.map((available) => ({ available })),
    1000 * cover.dearest,
  );
  const used: Column<T>[] = [];
  let itemDuals: number[] = [];
  let stockDuals: number[] = [];
  const inStock = (column: Column): boolean => column.use <= (rest.available[column.stock] ?? Infinity);
  // Pieces beyond what is wanted are worth nothing: counting them would only loosen the relaxation.
  const worthwhile = (column: Column): (readonly [number, number])[] =>
    column.pieces
      .filter(([item]) => rowOf.has(item))
      .map(([item, count]) => [item, Math.min(count, rest.wanted[item] as number)]);
  const add = (column: Column<T>): void => {
    used.push(column);
    lp.add({
      ...column,
      pieces: worthwhile(column).map(([item, count]) => [rowOf.get(item) as number, count]),
    });
  };
  for (const column of pool.columns) if (inStock(column)) add(column);
  return {
    add,
    /** Whether the relaxation would use the column at the values last solved for. */
    gains: (column: Column): boolean => {
      const value = worthwhile(column).reduce(
        (sum, [item, count]) => sum + count * (itemDuals[item] as number),
        0,
      );
      return (
        inStock(column) && value > column.cost + (stockDuals[column.stock] as number) * column.use + 1e-9
      );
    },
    solve() {
      lp.solve();
      const duals = lp.itemDuals();
      itemDuals = rest.wanted.map((_, item) =>
        rowOf.has(item) ? (duals[rowOf.get(item) as number] as number) : 0,
      );
      stockDuals = lp.stockDuals();
      const levels = lp.values();
      const fractional = used
        .map((column, at) => ({ column, level: levels[at] as number }))
        .filter((one) => one.level > 1e-6);
      return { itemDuals, stockDuals, fractional, cost: lp.cost(), uncovered: lp.uncovered() };
    },
  };
}

/**
 * A bound from any item values: for each scale t, t·(value of the demand) plus, for stock of limited number, what its
 * most overpriced pattern could still save. Unlimited stock allows only scales at which no pattern is overpriced.
 */
function lagrangeBound(values: readonly number[], rest: Rest, peaks: readonly Peak[]): number {
  const worth = rest.wanted.reduce((sum, pieces, item) => sum + pieces * (values[item] as number), 0);
  const scales = [
    1,
    ...peaks.filter((peak) => peak.bound > peak.cost && peak.cost > 0).map((peak) => peak.cost / peak.bound),
  ];
  const at = (scale: number): number => {
    const saving = new Map<number, number>();
    for (const peak of peaks) {
      const over = Math.max(0, (scale * peak.bound - peak.cost) / peak.use);
      saving.set(peak.stock, Math.max(saving.get(peak.stock) ?? 0, over));
    }
    let bound = scale * worth;
    for (const [stock, over] of saving) if (over > 1e-12) bound -= over * (rest.available[stock] ?? Infinity);
    return bound;
  };
  return Math.max(0, ...scales.map(at));
}
