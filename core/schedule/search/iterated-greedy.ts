import type { Problem } from '../problem.ts';
import { fastestSeconds } from '../rules/remaining.ts';
import type { Incumbent } from './incumbent.ts';
import { YieldBudget } from './yield-budget.ts';
import { AnyInsertion } from './insertion-any.ts';
import { MakespanInsertion } from './insertion-makespan.ts';
import type { Insertion } from './insertion.ts';
import { queuesInOrder } from './job-order.ts';
import type { Rng } from './rng.ts';

/** Jobs taken out each time, and the constant temperature as a share of a tenth of the mean operation. */
const TAKEN = 3;
const HEAT = 0.4;

/**
 * Iterated greedy for one job order on all machines: take a few jobs out, put each back where it costs least, improve by
 * single insertions, accept like annealing at a constant temperature. Begins from `order` or the rule that inserts
 * jobs by falling work, whichever is better.
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
  function* looking<T>(steps: Generator<void, T>): Generator<Incumbent, T> {
    for (let step = steps.next(); ; step = steps.next()) {
      if (budget.isDue(insertion.work)) yield { ...best, evaluations };
      if (step.done) return step.value;
    }
  }

  const byWork = yield* looking(insertByWork(problem, insertion));
  if (insertion.value(byWork) < value) [order, value] = [byWork, insertion.value(byWork)];
  [order, value] = yield* looking(improveByInsertion(insertion, order, value, rng));
  const heat = HEAT * Math.max(1, meanWork(problem) / 10);
  for (;;) {
    if (value < least) {
      least = value;
      best = incumbent();
    }
    const [next, cost] = yield* looking(rebuild(insertion, order, rng));
    evaluations += 1;
    if (cost <= value || rng.next() < Math.exp((value - cost) / heat)) [order, value] = [next, cost];
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

/** Takes a few jobs out, improves what is left, and puts them back. */
function* rebuild(
  insertion: Insertion,
  from: readonly number[],
  rng: Rng,
): Generator<void, [number[], number]> {
  const order = [...from];
  const out: number[] = [];
  while (out.length < TAKEN && order.length > 0) out.push(...order.splice(rng.below(order.length), 1));
  let value = insertion.value(order);
  for (const job of out) {
    const best = yield* insertion.best(order, job, rng.next());
    order.splice(best.position, 0, job);
    value = best.value;
  }
  return yield* improveByInsertion(insertion, order, value, rng);
}

/** Moves single jobs to their best positions, in random turn, until none gains. */
function* improveByInsertion(
  insertion: Insertion,
  from: readonly number[],
  start: number,
  rng: Rng,
): Generator<void, [number[], number]> {
  const order = [...from];
  let value = start;
  for (let gained = true; gained;) {
    gained = false;
    for (const job of shuffled(order, rng)) {
      const at = order.indexOf(job);
      order.splice(at, 1);
      const best = yield* insertion.best(order, job, rng.next());
      order.splice(best.value < value ? best.position : best.value === value ? best.position : at, 0, job);
      gained ||= best.value < value;
      value = Math.min(value, best.value);
      yield;
    }
  }
  return [order, value];
}

function shuffled(order: readonly number[], rng: Rng): number[] {
  const turn = [...order];
  for (let k = turn.length - 1; k > 0; k--) {
    const other = rng.below(k + 1);
    [turn[k], turn[other]] = [turn[other]!, turn[k]!];
  }
  return turn;
}

function meanWork(problem: Problem): number {
  let sum = 0;
  for (let o = 0; o < problem.operations; o++) sum += fastestSeconds(problem, o);
  return sum / Math.max(1, problem.operations);
}
