import type { Problem } from '../problem.ts';
import type { Incumbent } from './incumbent.ts';
import { objectiveAt, withFixedPositions, type NumberedQueues } from '../numbered-queues.ts';

/** Plans up to which all of them are tried. */
const MOST_PLANS = 20_000;
/** Plans between two yields. */
const YIELD_EVERY = 500;

/** Are there so few plans that complete enumeration is quick? One job order on all machines is left to its own search. */
export function isTiny(problem: Problem): boolean {
  if (problem.input.sameOrder) return false;
  const lengths = new Int32Array(problem.machines);
  let plans = 1;
  for (let o = 0; o < problem.operations && plans <= MOST_PLANS; o++) {
    if (problem.fixed[o]) continue;
    let positions = 0;
    for (const m of problem.eligible[o]!) positions += ++lengths[m]!;
    plans *= positions;
  }
  return plans <= MOST_PLANS;
}

/** Complete enumeration: each operation in turn at every position of every queue that can take it. The last yield is proven. */
export function* tryAll(problem: Problem, first: NumberedQueues): Generator<Incumbent, void> {
  let best: Incumbent = { queues: first, objective: objectiveAt(problem, first), evaluations: 0 };
  let evaluations = 0;
  for (const plan of plansFrom(
    problem,
    problem.front.map(() => []),
    0,
  )) {
    const queues = withFixedPositions(problem, plan);
    const objective = objectiveAt(problem, queues);
    evaluations += 1;
    if (objective < best.objective) best = { queues, objective, evaluations };
    if (evaluations % YIELD_EVERY === 0) yield { ...best, evaluations };
  }
  yield { ...best, evaluations, proven: true };
}

function* plansFrom(
  problem: Problem,
  queues: readonly number[][],
  o: number,
): Generator<readonly number[][], void> {
  if (o === problem.operations) return yield queues;
  if (problem.fixed[o]) return yield* plansFrom(problem, queues, o + 1);
  for (const m of problem.eligible[o]!) {
    const queue = queues[m]!;
    for (let position = 0; position <= queue.length; position++) {
      queue.splice(position, 0, o);
      yield* plansFrom(problem, queues, o + 1);
      queue.splice(position, 1);
    }
  }
}
