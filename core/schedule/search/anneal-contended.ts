import type { Problem } from '../problem.ts';
import { emptyTiming } from '../timing.ts';
import { timeQueues } from '../time-queues.ts';
import { anneal } from './anneal.ts';
import { atHome } from './at-home.ts';
import { constructions } from './constructions.ts';
import type { Incumbent } from './incumbent.ts';
import { objectiveAt, type NumberedQueues } from '../numbered-queues.ts';
import { FullEvaluator } from './full-evaluator.ts';
import { LayeredEvaluator } from './layered-evaluator.ts';
import type { Rng } from '../../rng.ts';

/** Plans evaluated without a better one, and so many more for each operation, until people and things are counted in every plan. */
const PATIENCE = 20_000;
const PATIENCE_EACH = 500;

/**
 * The search where people are short or machines share things, and the routings go forward. First it anneals a shop in which
 * machines never wait for each other, which is far cheaper to evaluate: each thing stays at one machine, nobody is short, but
 * machines are slower by as much as the people missing make them. People and things are counted only for the best plans
 * found there. When that brings nothing more it goes on with both kept in every plan.
 * No source: our own, measured in SEARCH.md. No plan it reports is worse than `first`.
 */
export function* annealContended(
  problem: Problem,
  first: NumberedQueues,
  rng: Rng,
): Generator<Incumbent, void> {
  let best: Incumbent = { queues: first, objective: objectiveAt(problem, first), evaluations: 0 };
  yield best;
  const apart = atHome(problem, first);
  let start: NumberedQueues | null = first;
  if (problem.held !== null) for (start of constructions(apart)) yield best;
  yield best;
  let evaluations = 0;
  for (const found of start === null ? [] : annealApart(problem, apart, start, rng)) {
    evaluations = found.evaluations;
    if (found.objective < best.objective) best = found;
    yield { ...best, evaluations };
    if (evaluations - best.evaluations > PATIENCE + PATIENCE_EACH * problem.operations) break;
  }
  for (const found of anneal(problem, new FullEvaluator(problem, best.queues), rng)) {
    if (found.objective < best.objective) best = found;
    yield { ...best, evaluations: evaluations + found.evaluations };
  }
}

/** Plans of the shop without waits between machines, each with its objective in the real one. */
function* annealApart(
  problem: Problem,
  apart: Problem,
  start: NumberedQueues,
  rng: Rng,
): Generator<Incumbent, void> {
  const slow = slowed(apart, start, sumOfEnds(problem, start));
  let evaluated: NumberedQueues | null = null;
  let objective = Infinity;
  for (const { queues, evaluations } of anneal(slow, new LayeredEvaluator(slow, start), rng)) {
    if (queues !== evaluated) objective = objectiveAt(problem, queues);
    evaluated = queues;
    yield { queues, objective, evaluations };
  }
}

/** The shop without its crew limit, every operation longer by one factor, so that the ends of these queues add up to `real`. */
function slowed(problem: Problem, queues: NumberedQueues, real: number): Problem {
  const withFactor = (factor: number): Problem => ({
    ...problem,
    input: { ...problem.input, crew: null },
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
