import type { Problem } from '../../problem.ts';
import type { Incumbent } from '../incumbent.ts';
import { YieldBudget } from '../yield-budget.ts';
import type { NumberedQueues } from '../../numbered-queues.ts';
import type { Rng } from '../rng.ts';
import { blockMoves, estimate, makeMove, orderAfter, type BlockMove } from './blocks.ts';
import { JobShopGraph } from './graph.ts';

/** What a step costs, in times every operation is timed. */
const STEP_WORK = 5;
/** Steps without a better plan before the search goes back to one of the best, shaken. */
const PATIENCE = 8_000;
const ELITE = 6;
const SHAKES = 8;

/**
 * Tabu search over critical blocks for the makespan of a job shop: always the best move not forbidden, forbidding its
 * way back for a while; when nothing better turns up, again from one of the best plans, shaken by a few random moves.
 * Sources: E. Nowicki and C. Smutnicki, Management Science 42, 1996, pp. 797-813; C. Zhang, P. Li, Z. Guan and Y. Rao,
 * Computers & Operations Research 34, 2007, pp. 3229-3242 (both from memory).
 */
export function* tabuSearch(problem: Problem, first: NumberedQueues, rng: Rng): Generator<Incumbent, void> {
  const graph = new JobShopGraph(problem, first);
  const weight = problem.input.objective.makespan;
  const tabu = new TabuList(graph.operations, rng);
  let best: Incumbent = { queues: first, objective: weight * graph.makespan, evaluations: 0 };
  let least = graph.makespan;
  const elite: NumberedQueues[] = [first];
  const budget = new YieldBudget();
  let idle = 0;
  for (let step = 1, evaluations = 0; ; step++) {
    const moves = blockMoves(graph, rng);
    evaluations += moves.length;
    if (moves.length > 0) tabu.take(graph, moves, step, least);
    idle += 1;
    if (graph.makespan < least) {
      least = graph.makespan;
      best = { queues: graph.queues(), objective: weight * least, evaluations };
      elite.unshift(best.queues);
      if (elite.length > ELITE) elite.pop();
      idle = 0;
    }
    if (idle > PATIENCE || moves.length === 0) {
      graph.load(elite[rng.below(elite.length)]!);
      shake(graph, rng);
      tabu.clear();
      idle = 0;
    }
    if (budget.isDue(step * STEP_WORK * graph.operations)) yield { ...best, evaluations };
  }
}

function shake(graph: JobShopGraph, rng: Rng): void {
  for (let k = 0; k < SHAKES; k++) {
    const moves = blockMoves(graph, rng);
    if (moves.length === 0) return;
    makeMove(graph, moves[rng.below(moves.length)]!);
    graph.time();
  }
}

/** Which operation must not come ahead of which again, and until when. */
class TabuList {
  readonly #until: Int32Array;
  readonly #size: number;
  readonly #rng: Rng;

  constructor(operations: number, rng: Rng) {
    this.#size = operations;
    this.#until = new Int32Array(operations * operations);
    this.#rng = rng;
  }

  clear(): void {
    this.#until.fill(0);
  }

  /** Makes the best move that is allowed, or promises a new best; failing that, one by lot. */
  take(graph: JobShopGraph, moves: readonly BlockMove[], step: number, least: number): void {
    let chosen: BlockMove | null = null;
    let shortest = Infinity;
    let ties = 0;
    for (const move of moves) {
      const order = orderAfter(graph, move);
      const span = estimate(graph, move, order);
      if (span > shortest || (span >= least && this.#isTabu(move, order, step))) continue;
      ties = span < shortest ? 1 : ties + 1;
      if (this.#rng.below(ties) === 0) chosen = move;
      shortest = span;
    }
    const move = chosen ?? moves[this.#rng.below(moves.length)]!;
    this.#forbid(move, orderAfter(graph, move), step);
    makeMove(graph, move);
    graph.time();
  }

  /** The moved operation and those it passes: would one come ahead again that must not? */
  #isTabu({ first, last, forward }: BlockMove, order: readonly number[], step: number): boolean {
    const moved = forward ? first : last;
    return order.some(
      (o) => o !== moved && this.#until[forward ? o * this.#size + moved : moved * this.#size + o]! > step,
    );
  }

  #forbid({ first, last, forward }: BlockMove, order: readonly number[], step: number): void {
    const moved = forward ? first : last;
    const until = step + 10 + this.#rng.below(8);
    for (const o of order)
      if (o !== moved) this.#until[forward ? moved * this.#size + o : o * this.#size + moved] = until;
  }
}
