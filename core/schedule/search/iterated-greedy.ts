import type { Problem } from '../problem.ts';
import { fastestSeconds } from '../rules/remaining.ts';
import type { Incumbent } from './incumbent.ts';
import { YieldBudget } from './yield-budget.ts';
import { insertionSearch, rebuilt } from './destruction-construction.ts';
import { AnyInsertion } from './insertion-any.ts';
import { MakespanInsertion } from './insertion-makespan.ts';
import type { Insertion } from './insertion.ts';
import { queuesInOrder } from './job-order.ts';
import type { Rng } from '../../rng.ts';

/** The constant temperature as a share of a tenth of the mean operation. */
const TEMPERATURE = 0.4;

/**
 * Iterated greedy for one job order on all machines: destruction, construction, local search by insertion, and acceptance
 * like annealing at a constant temperature T: a worse order with chance e^(gain / T). Begins from `first` or the rule that
 * inserts jobs by falling work, whichever is better.
 * Sources: M. Nawaz, E. E. Enscore and I. Ham, Omega 11, 1983, pp. 91-95 (from memory); R. Ruiz and T. Stuetzle, EJOR
 * 177, 2007, pp. 2033-2049 and EJOR 187, 2008, pp. 1143-1159.
 */
export function* iteratedGreedy(
  problem: Problem,
  first: readonly number[],
  rng: Rng,
): Generator<Incumbent, void> {
  const insertion = MakespanInsertion.fits(problem)
    ? new MakespanInsertion(problem)
    : new AnyInsertion(problem);
  const weight = insertion instanceof MakespanInsertion ? problem.input.objective.makespan : 1;
  let order = [...first];
  let value = insertion.value(order);
  let least = value;
  const incumbent = () => ({
    queues: queuesInOrder(problem, order),
    objective: weight * least,
    evaluations: 0,
  });
  let best = incumbent();
  let evaluations = 0;
  const budget = new YieldBudget();
  function* yielding<T>(steps: Generator<void, T>): Generator<Incumbent, T> {
    for (let step = steps.next(); ; step = steps.next()) {
      if (budget.isDue(insertion.work)) yield { ...best, evaluations };
      if (step.done) return step.value;
    }
  }

  const byWork = yield* yielding(insertByWork(problem, insertion));
  if (insertion.value(byWork) < value) [order, value] = [byWork, insertion.value(byWork)];
  [order, value] = yield* yielding(insertionSearch(insertion, order, value, rng));
  const temperature = TEMPERATURE * Math.max(1, meanWork(problem) / 10);
  for (;;) {
    if (value < least) {
      least = value;
      best = incumbent();
    }
    const [next, cost] = yield* yielding(rebuilt(insertion, order, rng));
    evaluations += 1;
    if (cost <= value || rng.next() < Math.exp((value - cost) / temperature)) [order, value] = [next, cost];
  }
}

function* insertByWork(problem: Problem, insertion: Insertion): Generator<void, number[]> {
  const work = Array.from({ length: problem.jobs }, (_, j) => {
    let sum = 0;
    for (let o = problem.firstOf[j]!; o < problem.firstOf[j + 1]!; o++) sum += fastestSeconds(problem, o);
    return sum;
  });
  const order: number[] = [];
  for (const job of [...work.keys()].sort((a, b) => work[b]! - work[a]! || a - b)) {
    const { position } = yield* insertion.best(order, job, 0);
    order.splice(position, 0, job);
    yield;
  }
  return order;
}

function meanWork(problem: Problem): number {
  let sum = 0;
  for (let o = 0; o < problem.operations; o++) sum += fastestSeconds(problem, o);
  return sum / Math.max(1, problem.operations);
}
