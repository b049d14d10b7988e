import { costOf, roundUp, type Column, type Cover, type Use } from './cover.ts';
import { fillByValue, take } from './fill.ts';
import { relax, wholeOf, type Pool, type Relaxed, type Rest } from './relaxation.ts';

/** Rounds of pricing inside one step of a dive: a few are enough, the pool is rich by then. */
const inDive = { rounds: 12, closeEnough: 0, exact: false };
/** The same where parts are fixed, many more of them. */
const inPartDive = { ...inDive, rounds: 3 };

/** Level from which a part is taken for whole. */
const nearly = 0.6;

/** The cheapest answer so far and who is told of a cheaper one. */
interface BestSoFar<T> {
  cost(): number;
  accept(uses: readonly Use<T>[]): void;
}

/**
 * Rounds the relaxation step by step: fix the whole parts, or else the fullest fraction, and solve again for the rest.
 * Ends early when the rest does not promise to beat the best answer any more.
 * Source: R. Sadykov, F. Vanderbeck and others, INFORMS Journal on Computing 31 (2019) 251-267 (diving with limited discrepancy).
 * @param skip the branching at which the second choice is taken instead of the first; −1: none
 */
export function* dive<T>(
  cover: Cover<T>,
  pool: Pool<T>,
  first: Relaxed<T>,
  skip: number,
  best: BestSoFar<T>,
): Generator<void, void> {
  let rest: Rest = wholeOf(cover);
  let relaxed = first;
  const uses: Use<T>[] = [];
  const offer = (more: readonly Use<T>[]): void => {
    if (costOf(uses) + costOf(more) < best.cost() - 1e-6) best.accept([...uses, ...more]);
  };
  for (let depth = 0; ;) {
    const fixed = wholeParts(relaxed);
    if (fixed.length === 0 && cover.balancesFrom !== undefined) fixed.push(...nearlyWhole(relaxed));
    if (fixed.length === 0) {
      const column = choice(relaxed, depth === skip ? 1 : 0);
      if (!column) return;
      fixed.push({ column, count: 1 });
      depth++;
    }
    rest = after(rest, fixed, cover.balancesFrom);
    uses.push(...fixed);
    if (rest.available.some((left) => left !== null && left < -1e-6)) return;
    if (rest.wanted.every((pieces) => pieces <= 0)) return offer([]);
    const filled =
      depth === 0 && cover.balancesFrom === undefined
        ? fillByValue(cover, rest, valuesOf(cover, relaxed))
        : null;
    if (filled) offer(filled);
    yield;
    const start = relaxed.fractional.map(({ column }) => column);
    const effort = cover.balancesFrom === undefined ? inDive : inPartDive;
    const solving = relax(cover, rest, pool, effort, start);
    let state = solving.next();
    while (!state.done) {
      yield;
      state = solving.next();
    }
    relaxed = state.value;
    if (roundUp(cover, costOf(uses) + relaxed.cost) >= best.cost() - 1e-6) return;
  }
}

function wholeParts<T>({ fractional }: Relaxed<T>): Use<T>[] {
  const whole = fractional.map(({ column, level }) => ({ column, count: Math.floor(level + 1e-5) }));
  return whole.filter((use) => use.count > 0);
}

/** Parts are small: several may be rounded up before the relaxation is solved again. */
const nearlyWhole = <T>({ fractional }: Relaxed<T>): Use<T>[] =>
  fractional.filter(({ level }) => level > nearly).map(({ column }) => ({ column, count: 1 }));

/** Dual values; among pieces of equal value the larger is laid first. */
const valuesOf = (cover: Cover, { itemDuals }: Relaxed<unknown>): number[] =>
  itemDuals.map((dual, item) => dual + 1e-9 * (cover.sizes[item] as number));

function after(rest: Rest, fixed: readonly Use[], balancesFrom: number | undefined): Rest {
  const wanted = rest.wanted.slice();
  const available = rest.available.slice();
  for (const { column, count } of fixed) take(column, count, wanted, available, balancesFrom);
  return { wanted, available };
}

/** The column with the highest (or second highest) level below one; ties go to the column met first. */
function choice<T>(relaxed: Relaxed<T>, rank: number): Column<T> | undefined {
  const ordered = relaxed.fractional.toSorted((a, b) => b.level - a.level);
  return (ordered[rank] ?? ordered[0])?.column;
}
