import { costOf, type Cover, type Use } from './cover.ts';
import { Rng } from '../rng.ts';
import { fillByValue, take } from './fill.ts';
import type { Rest } from './relaxation.ts';

/** Stock pieces taken out at once: a few, so that a fill is quick, and at least two, so that pieces change places. */
const fewestTaken = 2;
const mostTaken = 8;
/** An item's value for one fill: its size, a hair above in favour of large ones, up to so much more or less by lot. */
const exponent = 1.02;
const noise = 0.01;
/** Share of the best cost by which an answer may be dearer and still be gone on with: up to that, by lot. */
const dearer = 0.008;
/** Share of its cost that a stock piece without any waste counts as waste, so that it is taken out at times, too. */
const neverMind = 0.005;

/**
 * Improves an answer by taking out a few stock pieces, wasteful ones rather than good ones, and filling with what they held
 * again at values drawn anew, from some of the stocks; goes on with what is as good or a little dearer. Yields after each
 * fill; cheaper answers are handed to `accept`. The same answer is improved in the same way.
 * Source of the idea: G. Schrimpf and others, Journal of Computational Physics 159 (2000) 139-171 (ruin and recreate; from memory).
 * @param idle ends after so many fills without a cheaper answer
 */
export function* refill<T>(
  cover: Cover<T>,
  start: readonly Use<T>[],
  idle: number,
  accept: (uses: readonly Use<T>[]) => void,
): Generator<void> {
  const rng = new Rng(start.length);
  const chooser = chooserOf(cover, rng);
  let current = singles(start);
  let best = costOf(current);
  for (let since = 0; since < idle; since++) {
    const taken = chooser.some(current);
    const kept = current.filter((use) => !taken.has(use));
    const filled = fillByValue(cover, restOf(cover, kept, chooser.stocks()), chooser.values());
    yield;
    if (!filled) continue;
    const next = [...kept, ...singles(filled)];
    const cost = costOf(next);
    if (cost <= best * (1 + dearer * rng.next())) current = next;
    if (cost >= best - 1e-6) continue;
    best = cost;
    since = 0;
    accept(next);
  }
}

const singles = <T>(uses: readonly Use<T>[]): Use<T>[] =>
  uses.flatMap(({ column, count }) => Array.from({ length: count }, () => ({ column, count: 1 })));

/** What is drawn for one fill. */
function chooserOf(cover: Cover, rng: Rng) {
  const sizeOf = ({ column: { pieces } }: Use): number =>
    pieces.reduce((sum, [item, count]) => sum + count * (cover.sizes[item] as number), 0);
  const all = cover.demand.reduce((sum, pieces, item) => sum + pieces * (cover.sizes[item] as number), 0);
  const rate = cover.floor / all;
  const waste = (use: Use): number =>
    Math.max(0, use.column.cost - rate * sizeOf(use)) + neverMind * use.column.cost + 1e-9;
  return {
    /** Stock pieces drawn by their waste, each once (the smallest of exponential times). */
    some(uses: readonly Use[]): ReadonlySet<Use> {
      const most = fewestTaken + rng.below(mostTaken - fewestTaken + 1);
      const timed = uses.map((use) => ({ use, time: -Math.log(1 - rng.next()) / waste(use) }));
      return new Set(
        timed
          .sort((a, b) => a.time - b.time)
          .slice(0, most)
          .map(({ use }) => use),
      );
    },
    values: (): number[] => cover.sizes.map((size) => size ** exponent * (1 + noise * (2 * rng.next() - 1))),
    /** Every second stock, at least one. */
    stocks(): ReadonlySet<number> {
      const places = cover.stock.map((_, at) => at);
      const drawn = places.filter(() => rng.next() < 0.5);
      return new Set(drawn.length > 0 ? drawn : [rng.below(places.length)]);
    },
  };
}

/** What is still wanted beside the stock pieces kept, and what there is of the stocks drawn. */
function restOf(cover: Cover, kept: readonly Use[], stocks: ReadonlySet<number>): Rest {
  const wanted = cover.demand.slice();
  const available = cover.stock.map((one, at) => (stocks.has(at) ? one.available : 0));
  for (const { column } of kept) take(column, 1, wanted, available);
  return { wanted, available: available.map((left) => left && Math.max(0, left)) };
}
