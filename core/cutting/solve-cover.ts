import { costOf, roundUp, type Column, type Cover, type PartCover, type Use } from './cover.ts';
import { dive } from './dive.ts';
import { solveOverColumns, type SolveMip } from './mip.ts';
import { refill } from './refill.ts';
import { addTo, createPool, lagrangeBound, relax, wholeOf, type Pool, type Relaxed } from './relaxation.ts';
import { fillWithCorrection } from './value-correction.ts';

export interface SolveOptions {
  /** Without one, optimality is proven only where the bound is met. */
  readonly solveMip?: SolveMip;
}

/** Best so far: yielded after every piece of work, each no worse than the one before. */
export interface Progress<T> {
  /** null: nothing found yet that covers the demand from the stock there is. */
  readonly uses: readonly Use<T>[] | null;
  readonly cost: number;
  readonly lowerBound: number;
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'unknown';
  /** Pieces of work done so far. */
  readonly steps: number;
}

interface State<T> {
  readonly cover: Cover<T>;
  readonly pool: Pool<T>;
  uses: readonly Use<T>[] | null;
  cost: number;
  lowerBound: number;
  infeasible: boolean;
  steps: number;
}

/** Rounds of pricing before the relaxation is given up as it is; never met in practice. */
const maxRounds = 2000;
/** Share of the cost to which the bound is driven. */
const fine = 0.0005;
/** Dives by parts, the first without a second choice. */
const divesByParts = 4;
/** Fills without a cheaper answer after which a dive may bring more, and after which nothing more is expected. */
const idleAtFirst = 600;
const idleAtLast = 1500;
/** Dives with one second choice each, from the top down. */
const maxDives = 40;
/** What the integer solver may take: over all columns that matter it settles the question, over the pool it only may help. */
const secondsForProof = 30;
const secondsForPool = 2;
/** Fills for a first answer: where they are quick, and where each takes its time. */
const manyFills = 30;
const fewFills = 5;

/**
 * Covers a demand from stock at the least cost: first answers by heuristics, then a bound by column generation, then
 * rounding dives, then (with `solveMip`) an exact search over the columns that can still matter.
 * Reads no clock: the caller stops iterating when its time is up. The last value is final.
 * @param first an answer to start from, if the caller has one
 */
export function* solveCover<T>(
  cover: Cover<T>,
  first: readonly (readonly Use<T>[])[],
  options: SolveOptions,
): Generator<Progress<T>, Progress<T>> {
  const state: State<T> = {
    cover,
    pool: createPool<T>([]),
    uses: null,
    cost: Infinity,
    lowerBound: cover.floor,
    infeasible: false,
    steps: 0,
  };
  for (const uses of first) accept(state, uses);
  for (const phase of [firstAnswers(state), bounded(state, options)]) {
    for (const progress of phase) {
      yield progress;
      if (isDone(state)) return report(state);
    }
  }
  return report(state);
}

function* firstAnswers<T>(state: State<T>): Generator<Progress<T>> {
  const { cover } = state;
  if (state.uses) yield report(state);
  for (const uses of fillWithCorrection(
    cover,
    wholeOf(cover),
    cover.sizes,
    cover.enumerate ? manyFills : fewFills,
  )) {
    accept(state, uses);
    yield report(state);
  }
}

function* bounded<T>(state: State<T>, options: SolveOptions): Generator<Progress<T>> {
  const { cover } = state;
  if (cover.parts) yield* byParts(state, cover.parts);
  const relaxed = yield* relaxation(state, cover.enumerate ? 0 : fine);
  if (relaxed.uncovered > 1e-4 && relaxed.converged) {
    state.infeasible = state.uses === null;
    yield report(state);
    return;
  }
  for (let at = -1; at < maxDives; at++) {
    // A dive often saves the exact search; where the columns that matter are too many to list, a few more do.
    if (options.solveMip && (at === 0 || at === 3)) {
      const list = columnsThatMatter(state, relaxed);
      if (list || at === 3) {
        exactly(state, list, options.solveMip);
        yield report(state);
        if (isDone(state)) return;
      }
    }
    yield* oneDive(state, relaxed, at);
  }
}

function* oneDive<T>(state: State<T>, relaxed: Relaxed<T>, skip: number): Generator<Progress<T>> {
  const best = { cost: () => state.cost, accept: (uses: readonly Use<T>[]) => accept(state, uses) };
  const diving = dive(state.cover, state.pool, relaxed, skip, best);
  while (!diving.next().done) yield report(state);
  yield report(state);
}

/** By parts, which are found far sooner than whole columns: a bound, fills of the answer's worse parts, dives, and fills again. */
function* byParts<T>(state: State<T>, parts: PartCover<T>): Generator<Progress<T>> {
  const { cover } = state;
  const pool = createPool(parts.split(state.uses ?? []).map(({ column }) => column));
  for (const column of worthBySize(parts.cover)) addTo(pool, column);
  const relaxed = yield* relaxParts(state, parts, pool, false);
  if (relaxed.uncovered > 1e-4) return;
  const prove = function* (): Generator<Progress<T>> {
    // Where the next cheaper cost is below the relaxation already, exact pricing may prove that there is none.
    if (!isDone(state) && roundUp(cover, relaxed.cost) >= state.cost - 1e-6)
      yield* relaxParts(state, parts, pool, true);
  };
  yield* refilled(state, idleAtFirst);
  yield* prove();
  const best = {
    cost: () => state.cost,
    accept: (uses: readonly Use[]) => accept(state, parts.join(uses)),
  };
  for (let skip = -1; skip < divesByParts && !isDone(state); skip++) {
    const diving = dive(parts.cover, pool, relaxed, skip, best);
    while (!diving.next().done) yield report(state);
    yield report(state);
  }
  yield* prove();
  yield* refilled(state, idleAtLast);
}

/** The best answer so far filled again in part, until that brings no more. */
function* refilled<T>(state: State<T>, idle: number): Generator<Progress<T>> {
  if (!state.uses) return;
  const filling = refill(state.cover, state.uses, idle, (uses) => accept(state, uses));
  while (!filling.next().done && !isDone(state)) yield report(state);
}

/** Parts worth having when a piece is worth its size and a place costs nothing: a start that saves a quarter of the rounds of pricing. */
const worthBySize = <P>(cover: Cover<P>): readonly Column<P>[] => {
  const from = cover.balancesFrom ?? cover.sizes.length;
  const values = cover.sizes.map((size, item) => (item < from ? size : 0));
  return cover.price(values, cover.demand, null, 'quick').columns;
};

/** Relaxes the cover of parts; the values found bound the whole cover, too. */
function* relaxParts<T>(
  state: State<T>,
  parts: PartCover<T>,
  pool: Pool<unknown>,
  exact: boolean,
): Generator<Progress<T>, Relaxed<unknown>> {
  const { cover } = state;
  const effort = { rounds: maxRounds, closeEnough: 0, exact };
  const solving = relax(parts.cover, wholeOf(parts.cover), pool, effort);
  let step = solving.next();
  for (; !step.done; step = solving.next()) yield report(state);
  const values = step.value.itemDuals.slice(0, cover.demand.length);
  const { peaks } = cover.price(values, cover.demand, step.value.stockDuals, 'exact');
  state.lowerBound = Math.max(state.lowerBound, lagrangeBound(values, wholeOf(cover), peaks));
  return step.value;
}

function* relaxation<T>(state: State<T>, closeEnough: number): Generator<Progress<T>, Relaxed<T>> {
  const effort = { rounds: maxRounds, closeEnough, exact: true };
  const solving = relax(state.cover, wholeOf(state.cover), state.pool, effort);
  for (;;) {
    const step = solving.next();
    state.lowerBound = Math.max(state.lowerBound, step.value.bound);
    if (step.done) return step.value;
    yield report(state);
  }
}

/** Only columns whose reduced cost is within the gap left can be part of a cheaper answer; null where they are too many to list. */
function columnsThatMatter<T>({ cover, cost }: State<T>, relaxed: Relaxed<T>): Column<T>[] | null {
  if (!relaxed.converged || !cover.enumerate) return null;
  return cover.enumerate(
    relaxed.itemDuals,
    relaxed.stockDuals,
    targetBelow(cover, cost) - relaxed.bound + 1e-6,
  );
}

/** An exact search over the columns that matter finds a cheaper answer or proves there is none; over the pool it may find one. */
function exactly<T>(state: State<T>, list: readonly Column<T>[] | null, solveMip: SolveMip): void {
  const { cover, pool } = state;
  const limits = {
    atMost: targetBelow(cover, state.cost),
    atLeast: state.lowerBound,
    seconds: list ? secondsForProof : secondsForPool,
  };
  const answer = solveOverColumns(cover, list ?? pool.columns, limits, solveMip);
  accept(state, answer.uses);
  if (list && answer.exhausted) state.lowerBound = Math.max(state.lowerBound, state.cost);
}

/** The cost to look for: the next below. */
const targetBelow = (cover: Cover, cost: number): number =>
  cost - (cover.costUnit > 0 ? cover.costUnit : 1e-6 * cost);

function accept<T>(state: State<T>, uses: readonly Use<T>[] | null): void {
  if (!uses) return;
  for (const { column } of uses) addTo(state.pool, column);
  const cost = costOf(uses);
  if (cost >= state.cost - 1e-9) return;
  state.uses = uses;
  state.cost = cost;
}

const isDone = <T>(state: State<T>): boolean =>
  state.infeasible || roundUp(state.cover, state.lowerBound) >= state.cost - 1e-6;

function report<T>(state: State<T>): Progress<T> {
  state.steps++;
  const proven = state.uses !== null && isDone(state);
  const lowerBound = Math.min(roundUp(state.cover, state.lowerBound), state.cost);
  const status = state.infeasible ? 'infeasible' : proven ? 'optimal' : state.uses ? 'feasible' : 'unknown';
  return { uses: state.uses, cost: state.cost, lowerBound, status, steps: state.steps };
}
