import { lowerBound } from './bounds.ts';
import { isContended } from './contention.ts';
import { scheduleOf } from './decode.ts';
import type { Problem, Queues, Schedule } from './problem.ts';
import { anneal } from './search/anneal.ts';
import type { Incumbent } from './search/incumbent.ts';
import { constructions } from './search/constructions.ts';
import type { NumberedQueues } from './numbered-queues.ts';
import { iteratedGreedy } from './search/iterated-greedy.ts';
import { JobShopGraph } from './search/job-shop/graph.ts';
import { tabuSearch } from './search/job-shop/tabu.ts';
import { orderOf } from './search/job-order.ts';
import { isTiny, tryAll } from './search/exhaustive.ts';
import { FullEvaluator } from './search/full-evaluator.ts';
import { LayeredEvaluator } from './search/layered-evaluator.ts';
import { iterateSequence } from './search/one-machine/iterate.ts';
import { Sequence } from './search/one-machine/sequence.ts';
import { Rng } from '../rng.ts';
import { annealContended } from './search/anneal-contended.ts';
import { emptyTiming } from './timing.ts';
import { timeQueues } from './time-queues.ts';

/** The best plan so far. `queues` and `schedule` are the same objects until a better plan is found. */
export interface Found {
  readonly queues: Queues;
  readonly schedule: Schedule;
  readonly objective: number;
  /** Times the search reported so far; 0 while the dispatch rules are tried. */
  readonly step: number;
  /** Plans evaluated so far. */
  readonly evaluations: number;
  /** `optimal` when the objective meets the bound, or every plan was tried. */
  readonly status: 'feasible' | 'optimal';
  /** No plan can be better than this; null when no bound is known. */
  readonly bound: number | null;
}

const TINY = 1e-9;

/**
 * Searches for better and better plans until the caller stops asking, or one is proven best. Deterministic: the same
 * problem, seed and start give the same plans in the same order, whatever the clock. It yields every few milliseconds
 * of work, first after each dispatch rule; no yield is worse than one before it or than `start`. Pins, frozen and started
 * operations stay in place. If even the best plan does not fit into the open hours it ends without a yield; `decode`
 * then says why.
 * @param options.start queues to begin from, if they are complete; fixed operations are put back into their positions
 */
export function* improve(
  problem: Problem,
  options: { seed: number; start?: Queues },
): Generator<Found, void> {
  const bound = lowerBound(problem).value;
  let queues: NumberedQueues | null = null;
  let found: Found | null = null;
  for (const best of constructions(problem, options.start)) {
    if (best === null) continue;
    if (found === null || best !== queues) found = foundOf(problem, best, 0, 0, bound);
    queues = best;
    yield found;
    if (found.status === 'optimal') return;
  }
  if (queues === null || found === null) return;
  let step = 0;
  for (const incumbent of search(problem, queues, new Rng(options.seed))) {
    step += 1;
    const better: boolean = incumbent.queues !== queues && incumbent.objective < found.objective - TINY;
    found = better
      ? foundOf(problem, incumbent.queues, step, incumbent.evaluations, bound)
      : { ...found, step, evaluations: incumbent.evaluations };
    if (incumbent.proven) found = { ...found, status: 'optimal' };
    queues = incumbent.queues;
    yield found;
    if (found.status === 'optimal') return;
  }
}

function search(problem: Problem, first: NumberedQueues, rng: Rng): Generator<Incumbent, void> {
  if (isTiny(problem)) return tryAll(problem, first);
  if (Sequence.fits(problem)) return iterateSequence(problem, first, rng);
  if (problem.input.sameOrder) return iteratedGreedy(problem, orderOf(problem, first), rng);
  if (JobShopGraph.fits(problem)) return tabuSearch(problem, first, rng);
  if (problem.machineOrder === null) return anneal(problem, new FullEvaluator(problem, first), rng);
  if (isContended(problem)) return annealContended(problem, first, rng);
  return anneal(problem, new LayeredEvaluator(problem, first), rng);
}

function foundOf(
  problem: Problem,
  queues: NumberedQueues,
  step: number,
  evaluations: number,
  bound: number,
): Found {
  const schedule = scheduleOf(problem, queues, timeQueues(problem, queues, emptyTiming(problem)));
  const status = schedule.objective <= bound + TINY * Math.max(1, bound) ? 'optimal' : 'feasible';
  return {
    queues: schedule.queues,
    schedule,
    objective: schedule.objective,
    step,
    evaluations,
    status,
    bound,
  };
}
