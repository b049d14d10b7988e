import type { Problem } from '../../problem.ts';
import type { Incumbent } from '../incumbent.ts';
import { YieldBudget } from '../yield-budget.ts';
import type { NumberedQueues } from '../../numbered-queues.ts';
import type { Rng } from '../../../rng.ts';
import { apply, estimatedMakespan, orderAfter, type BlockMove } from './block-move.ts';
import { blockMoves } from './critical-blocks.ts';
import { JobShopGraph } from './graph.ts';
import { TabuList } from './tabu-list.ts';

/** What a step costs, in times every operation is timed. */
const STEP_WORK = 5;
/** Steps without a better plan before the search goes back to an elite plan, perturbed. */
const PATIENCE = 8_000;
const ELITE = 6;
const PERTURBATIONS = 8;

/**
 * Tabu search over critical blocks for the makespan of a job shop: always the best move that is not tabu, whose way back
 * is then tabu for a while; when nothing better turns up, again from one of the elite plans, perturbed by a few random moves.
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
    if (moves.length > 0) applyBest(graph, moves, { tabu, step, least, rng });
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
      perturb(graph, rng);
      tabu.clear();
      idle = 0;
    }
    if (budget.isDue(step * STEP_WORK * graph.operations)) yield { ...best, evaluations };
  }
}

function perturb(graph: JobShopGraph, rng: Rng): void {
  for (let k = 0; k < PERTURBATIONS; k++) {
    const moves = blockMoves(graph, rng);
    if (moves.length === 0) return;
    apply(graph, moves[rng.below(moves.length)]!);
    graph.time();
  }
}

/**
 * Applies the move with the least estimated makespan among those that are not tabu, or promise a new best (aspiration);
 * where there is none, one drawn at random.
 */
function applyBest(
  graph: JobShopGraph,
  moves: readonly BlockMove[],
  { tabu, step, least, rng }: { tabu: TabuList; step: number; least: number; rng: Rng },
): void {
  let chosen: BlockMove | null = null;
  let shortest = Infinity;
  let ties = 0;
  for (const move of moves) {
    const order = orderAfter(graph, move);
    const makespan = estimatedMakespan(graph, move, order);
    if (makespan > shortest || (makespan >= least && tabu.forbids(move, order, step))) continue;
    ties = makespan < shortest ? 1 : ties + 1;
    if (rng.below(ties) === 0) chosen = move;
    shortest = makespan;
  }
  const move = chosen ?? moves[rng.below(moves.length)]!;
  tabu.forbid(move, orderAfter(graph, move), step);
  apply(graph, move);
  graph.time();
}
