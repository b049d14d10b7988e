import type { Problem } from '../problem.ts';
import { emptyTiming } from '../timing.ts';
import { timeQueues } from '../time-queues.ts';
import { anneal } from './anneal.ts';
import type { Incumbent } from './incumbent.ts';
import { objectiveAt, type NumberedQueues } from '../numbered-queues.ts';
import { FullEvaluator } from './full-evaluator.ts';
import { LayeredEvaluator } from './layered-evaluator.ts';
import type { Rng } from './rng.ts';

/** Plans evaluated without a better one, and so many more for each operation, until people and things are counted in every plan. */
const PATIENCE = 20_000;
const PATIENCE_EACH = 500;

/**
 * The search where people are short or machines share things, and the routings go forward. First it anneals the same shop
 * with nothing short but its machines slower by as much as what is missing makes them, which is far cheaper to evaluate, and
 * counts people and things only for the best plans found there. When that brings nothing more it goes on with both kept in
 * every plan.
 * No source: our own, measured in SEARCH.md. No plan it reports is worse than `first`.
 */
export function* annealContended(
  problem: Problem,
  first: NumberedQueues,
  rng: Rng,
): Generator<Incumbent, void> {
  let best: Incumbent = { queues: first, objective: objectiveAt(problem, first), evaluations: 0 };
  yield best;
  const slow = slowed(problem, first);
  yield best;
  let evaluated: NumberedQueues = first;
  let evaluations = 0;
  for (const found of anneal(slow, new LayeredEvaluator(slow, first), rng)) {
    evaluations = found.evaluations;
    if (found.queues !== evaluated) {
      evaluated = found.queues;
      const objective = objectiveAt(problem, evaluated);
      if (objective < best.objective) best = { queues: evaluated, objective, evaluations };
    }
    yield { ...best, evaluations };
    if (evaluations - best.evaluations > PATIENCE + PATIENCE_EACH * problem.operations) break;
  }
  for (const found of anneal(problem, new FullEvaluator(problem, best.queues), rng)) {
    if (found.objective < best.objective) best = found;
    yield { ...best, evaluations: evaluations + found.evaluations };
  }
}

/** The shop with people and things enough, every operation longer by one factor, so that these queues take as long as they do. */
function slowed(problem: Problem, queues: NumberedQueues): Problem {
  const real = sumOfEnds(problem, queues);
  const withFactor = (factor: number): Problem => ({
    ...problem,
    input: { ...problem.input, crew: null },
    held: null,
    seconds: problem.seconds.map((seconds) =>
      seconds < 0 ? seconds : Math.min(2e9, Math.round(seconds * factor)),
    ),
  });
  let [low, high] = [1, 4];
  for (let k = 0; k < 8; k++) {
    const middle = (low + high) / 2;
    if (sumOfEnds(withFactor(middle), queues) < real) low = middle;
    else high = middle;
  }
  return withFactor(low);
}

function sumOfEnds(problem: Problem, queues: NumberedQueues): number {
  return timeQueues(problem, queues, emptyTiming(problem)).end.reduce((sum, end) => sum + end, 0);
}
