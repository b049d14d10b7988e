import type { Insertion } from './insertion.ts';
import type { Rng } from '../../rng.ts';

/** Jobs removed each time. */
const REMOVED = 3;

type Order = readonly [order: number[], value: number];

/**
 * The move of iterated greedy: destruction, construction, then local search. Every job order is valid.
 *
 *     A B C D E   D, A, C removed →   B E   D inserted where best →   D B E   then A →   D B E A   then C →   D C B E A
 *
 * Its gain is the value of the order before less the value after; `Insertion` says what each position costs.
 * Source: R. Ruiz and T. Stuetzle, EJOR 177, 2007, pp. 2033-2049.
 */
export function* rebuilt(insertion: Insertion, from: readonly number[], rng: Rng): Generator<void, Order> {
  const order = [...from];
  const removed = destruct(order, rng);
  const value = yield* construct(insertion, order, removed, rng);
  return yield* insertionSearch(insertion, order, value, rng);
}

/** Removes a few jobs drawn at random from the order. @returns them in the order drawn */
function destruct(order: number[], rng: Rng): number[] {
  const removed: number[] = [];
  while (removed.length < REMOVED && order.length > 0)
    removed.push(...order.splice(rng.below(order.length), 1));
  return removed;
}

/** Inserts each job where it costs least. @returns the value of the order then */
function* construct(
  insertion: Insertion,
  order: number[],
  removed: readonly number[],
  rng: Rng,
): Generator<void, number> {
  let value = insertion.value(order);
  for (const job of removed) {
    const best = yield* insertion.best(order, job, rng.next());
    order.splice(best.position, 0, job);
    value = best.value;
  }
  return value;
}

/** Local search: moves single jobs to their best positions, in random turn, until none gains. */
export function* insertionSearch(
  insertion: Insertion,
  from: readonly number[],
  start: number,
  rng: Rng,
): Generator<void, Order> {
  const order = [...from];
  let value = start;
  for (let gained = true; gained;) {
    gained = false;
    for (const job of rng.shuffled(order)) {
      const at = order.indexOf(job);
      order.splice(at, 1);
      const best = yield* insertion.best(order, job, rng.next());
      order.splice(best.value <= value ? best.position : at, 0, job);
      gained ||= best.value < value;
      value = Math.min(value, best.value);
      yield;
    }
  }
  return [order, value];
}
