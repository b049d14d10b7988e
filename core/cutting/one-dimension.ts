import type { Column, Cover, Peak, Use } from './cover.ts';
import type { CutPattern, CutProblem, CutResult } from './cut-problem.ts';
import {
  allPatterns,
  bestPatterns,
  noRule,
  patternSearch,
  type Pattern,
  type PatternSearch,
  type SearchEffort,
} from './knapsack.ts';
import { solveCover, type Progress, type SolveOptions } from './solve-cover.ts';

/** Best so far for a one-dimensional problem; `result` is null while nothing covers the demand. */
export interface CutProgress {
  readonly result: CutResult | null;
  readonly lowerBound: number;
  readonly status: Progress<unknown>['status'];
  readonly steps: number;
}

const toEnumerate = { full: true, limit: 12_000, nodes: 4_000_000 };
const toPrice: SearchEffort = { keep: 20, nodes: 30_000, slack: 0.25 };
const toFill: SearchEffort = { keep: 20, nodes: 5_000, slack: 0 };

/**
 * Cuts pieces of given lengths from stock lengths at the least cost of stock: an anytime answer with a proven bound.
 * @param given read by `readCutProblem`; lengths in any one unit
 * @returns a generator: each value is the best so far, the last one final; stop iterating when the time is up
 */
export function* solveOneDimension(
  given: CutProblem,
  options: SolveOptions,
): Generator<CutProgress, CutProgress> {
  const cover = coverOf(given);
  const solving = solveCover(cover, [], options);
  let step = solving.next();
  while (!step.done) {
    yield inTerms(given, step.value);
    step = solving.next();
  }
  return inTerms(given, step.value);
}

/** The problem as a cover; a layout is the pattern's counts. */
function coverOf(given: CutProblem): Cover<null> {
  const demand = given.items.map((item) => item.quantity);
  const costs = given.stock.map((stock) => stock.cost);
  const search = (
    stock: CutProblem['stock'][number],
    values: readonly number[],
    wanted: readonly number[],
  ): PatternSearch =>
    patternSearch(
      given.items.map((item, at) => ({
        size: item.length,
        value: values[at] as number,
        copies: wanted[at] as number,
      })),
      stock.length - given.trim,
      noRule,
    );
  return {
    demand,
    stock: given.stock.map(({ available }) => ({ available })),
    sizes: given.items.map((item) => item.length),
    costUnit: commonUnit(costs),
    floor: leastByRate(
      given.items.reduce((sum, item) => sum + item.length * item.quantity, 0),
      given.stock.map(({ length, cost, available }) => ({
        rate: cost / Math.max(length - given.trim, 1e-9),
        room: available === null ? null : available * Math.max(0, length - given.trim),
      })),
    ),
    missing: demand.map(() => 1000 * Math.max(1, ...costs)),
    price(values, wanted, duals) {
      const columns: Column<null>[] = [];
      const peaks: Peak[] = [];
      given.stock.forEach((stock, at) => {
        const least = duals ? stock.cost + (duals[at] as number) + 1e-7 : 0;
        const found = bestPatterns(search(stock, values, wanted), least, duals ? toPrice : toFill);
        columns.push(...found.patterns.map((pattern) => columnOf(pattern, at, stock.cost)));
        peaks.push({ stock: at, use: 1, cost: stock.cost, bound: found.bound });
      });
      return { columns, peaks };
    },
    enumerate(values, duals, gap) {
      // A piece worth nothing still has to be laid in somewhere for a pattern to be full.
      const atLeastSomething = values.map((value) => Math.max(value, 1e-12));
      const columns: Column<null>[] = [];
      for (const [at, stock] of given.stock.entries()) {
        const least = stock.cost + (duals[at] as number) - gap;
        const found = allPatterns(search(stock, atLeastSomething, demand), least, toEnumerate);
        if (!found) return null;
        columns.push(...found.map((pattern) => columnOf(pattern, at, stock.cost)));
      }
      return columns;
    },
  };
}

/**
 * The least that a length or an area of material costs when it is taken where it is cheapest, as far as that reaches.
 * @param rooms what each stock has at most, null without limit
 */
export function leastByRate(
  amount: number,
  rooms: readonly { readonly rate: number; readonly room: number | null }[],
): number {
  let left = amount;
  let cost = 0;
  const usable = rooms.filter(({ rate }) => Number.isFinite(rate));
  for (const { rate, room } of usable.sort((a, b) => a.rate - b.rate)) {
    const taken = Math.min(left, room ?? Infinity);
    cost += taken * rate;
    left -= taken;
  }
  // A rounding error must not lift the bound over a cost that can be met exactly.
  return cost * (1 - 1e-9);
}

const columnOf = (pattern: Pattern, stock: number, cost: number): Column<null> => ({
  stock,
  use: 1,
  cost,
  pieces: pattern.counts.flatMap((count, item) => (count > 0 ? [[item, count] as const] : [])),
  layout: null,
});

/** The greatest number of which all costs are whole multiples; 0 when they are not whole numbers. */
export function commonUnit(costs: readonly number[]): number {
  if (!costs.every(Number.isInteger)) return 0;
  const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
  return costs.reduce(gcd, 0);
}

function inTerms(given: CutProblem, progress: Progress<null>): CutProgress {
  const { lowerBound, status, steps } = progress;
  if (!progress.uses) return { result: null, lowerBound, status, steps };
  const patterns = exactPatterns(given, progress.uses);
  return { result: { name: given.name, objective: progress.cost, patterns }, lowerBound, status, steps };
}

/** The uses as patterns, pieces beyond the demand left out (the last uses of a column then differ from the first). */
function exactPatterns(given: CutProblem, uses: readonly Use[]): CutPattern[] {
  const left = given.items.map((item) => item.quantity);
  const patterns: CutPattern[] = [];
  for (const { column, count } of uses) {
    const stock = (given.stock[column.stock] as CutProblem['stock'][number]).id;
    for (let made = 0; made < count;) {
      const pieces = column.pieces.map(
        ([item, most]) => [item, Math.min(most, left[item] as number)] as const,
      );
      const times = Math.min(
        count - made,
        ...pieces.filter(([, n]) => n > 0).map(([item, n]) => Math.floor((left[item] as number) / n)),
      );
      for (const [item, n] of pieces) left[item] = (left[item] as number) - n * times;
      const items = Object.fromEntries(
        pieces.filter(([, n]) => n > 0).map(([item, n]) => [(given.items[item] as { id: string }).id, n]),
      );
      patterns.push({ stock, count: times, items });
      made += times;
    }
  }
  return patterns;
}
