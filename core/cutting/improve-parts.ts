import { costOf, roundUp, valueOf, type Cover, type PartCover, type Use } from './cover.ts';
import { dive } from './dive.ts';
import { relax, wholeOf, type Pool } from './relaxation.ts';

/** Stock pieces taken out and planned again at once: few enough to be solved well, enough to change something. */
const partSize = 10;
const inPart = { rounds: 25, closeEnough: 0, exact: false };

/**
 * Improves an answer part by part: takes out the stock pieces that waste most at the relaxation's item values, together
 * with others in turn, and covers what they held again more cheaply, if that can be done. Ends after a full turn without gain.
 * Yields after each piece of work; the answer so far is handed to `accept`.
 * Source of the idea: P. Shaw, Principles and Practice of Constraint Programming (1998) 417-431 (large neighbourhood search).
 */
export function* improveParts<T>(
  cover: Cover<T>,
  parts: PartCover<T>,
  pool: Pool<unknown>,
  start: readonly Use<T>[],
  itemDuals: readonly number[],
  accept: (uses: readonly Use<T>[]) => void,
): Generator<void> {
  const waste = ({ column }: Use<T>): number => column.cost - valueOf(column, itemDuals);
  let pieces = singles(start);
  for (let turn = 0, idle = 0; idle * (partSize / 2) < pieces.length; turn++) {
    const ordered = pieces.toSorted((a, b) => waste(b) - waste(a));
    const taken = part(ordered, turn);
    const kept = ordered.filter((use) => !taken.includes(use));
    const better = yield* coverAgain(restOf(cover, kept), parts, pool, taken);
    idle = better ? 0 : idle + 1;
    if (!better) continue;
    pieces = [...kept, ...singles(better)];
    accept(pieces);
  }
}

const singles = <T>(uses: readonly Use<T>[]): Use<T>[] =>
  uses.flatMap(({ column, count }) => Array.from({ length: count }, () => ({ column, count: 1 })));

/** Half of the part from the most wasteful, the other half further down, another place each turn. */
function part<T>(ordered: readonly Use<T>[], turn: number): Use<T>[] {
  const half = partSize / 2;
  const at = (turn * half) % Math.max(1, ordered.length);
  const stride = 1 + (turn % 3);
  const others = Array.from(
    { length: half },
    (_, k) => ordered[(half + at + k * stride) % ordered.length] as Use<T>,
  );
  return [...new Set([...ordered.slice(0, half), ...others])];
}

/** What is left of the demand and the stock when some uses stand. */
function restOf<T>(cover: Cover<T>, kept: readonly Use<T>[]): Cover<T> {
  const demand = cover.demand.slice();
  const stock = cover.stock.map((one) => one.available);
  for (const { column, count } of kept) {
    for (const [item, pieces] of column.pieces)
      demand[item] = Math.max(0, (demand[item] as number) - pieces * count);
    const left = stock[column.stock];
    if (left != null) stock[column.stock] = left - column.use * count;
  }
  return { ...cover, demand, stock: stock.map((available) => ({ available })) };
}

/** Covers the rest for less than `taken` costs, if it can. */
function* coverAgain<T>(
  { demand, stock }: Cover<T>,
  { cover, split, join }: PartCover<T>,
  pool: Pool<unknown>,
  taken: readonly Use<T>[],
): Generator<void, readonly Use<T>[] | null> {
  if (demand.every((pieces) => pieces === 0)) return [];
  const rest = { ...cover, stock, demand: [...demand, ...cover.demand.slice(demand.length)] };
  const start = split(taken).map(({ column }) => column);
  const solving = relax(rest, wholeOf(rest), pool, inPart, start);
  let step = solving.next();
  while (!step.done) {
    yield;
    step = solving.next();
  }
  if (roundUp(rest, step.value.cost) >= costOf(taken) - 1e-6) return null;
  let best: readonly Use<T>[] | null = null;
  yield* dive(rest, pool, step.value, -1, {
    cost: () => costOf(best ?? taken),
    accept: (uses) => (best = join(uses)),
  });
  return best;
}
