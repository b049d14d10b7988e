import { costOf, roundUp, type Column, type Cover, type Use } from './cover.ts';
import { fillByValue, take } from './fill.ts';
import { relax, wholeOf, type Pool, type Relaxed, type Rest } from './relaxation.ts';

/** Rounds of pricing inside one step of a dive: a few are enough, the pool is rich by then. */
const inDive = { rounds: 12, closeEnough: 0, exact: false };

/**
 * Rounds the relaxation step by step: fix the whole parts, or else the fullest fraction, and solve again for the rest.
 * Ends early when the rest cannot beat `best` any more.
 * Source: R. Sadykov, F. Vanderbeck and others, INFORMS Journal on Computing 31 (2019) 251-267 (diving with limited discrepancy).
 * @param skip the branching at which the second choice is taken instead of the first; −1: none
 * @returns the uses, or null when nothing better than `best` was found
 */
export function* dive<T>(
  cover: Cover<T>,
  pool: Pool<T>,
  first: Relaxed<T>,
  best: number,
  skip: number,
): Generator<void, Use<T>[] | null> {
  let rest: Rest = wholeOf(cover);
  let relaxed = first;
  const uses: Use<T>[] = [];
  for (let depth = 0; ;) {
    const whole = relaxed.fractional.map(({ column, level }) => ({
      column,
      count: Math.floor(level + 1e-5),
    }));
    let fixed = whole.filter((use) => use.count > 0);
    if (fixed.length === 0) {
      const column = choice(relaxed, depth === skip ? 1 : 0);
      if (!column) return null;
      fixed = [{ column, count: 1 }];
      depth++;
    }
    rest = after(rest, fixed);
    uses.push(...fixed);
    if (rest.available.some((left) => left !== null && left < -1e-6)) return null;
    if (rest.wanted.every((pieces) => pieces === 0)) return costOf(uses) < best - 1e-6 ? uses : null;
    const filled =
      depth > 0
        ? null
        : fillByValue(
            cover,
            rest,
            relaxed.itemDuals.map((dual, item) => dual + 1e-9 * (cover.sizes[item] as number)),
          );
    if (filled && costOf(uses) + costOf(filled) < best - 1e-6) return [...uses, ...filled];
    yield;
    const solving = relax(cover, rest, pool, inDive);
    let state = solving.next();
    while (!state.done) {
      yield;
      state = solving.next();
    }
    relaxed = state.value;
    if (roundUp(cover, costOf(uses) + relaxed.bound) >= best - 1e-6) return null;
  }
}

function after(rest: Rest, fixed: readonly Use[]): Rest {
  const wanted = rest.wanted.slice();
  const available = rest.available.slice();
  for (const { column, count } of fixed) take(column, count, wanted, available);
  return { wanted, available };
}

/** The column with the highest (or second highest) level below one; ties go to the column met first. */
function choice<T>(relaxed: Relaxed<T>, rank: number): Column<T> | undefined {
  const ordered = relaxed.fractional.toSorted((a, b) => b.level - a.level);
  return (ordered[rank] ?? ordered[0])?.column;
}
