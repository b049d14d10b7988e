import { isContended } from '../contention.ts';
import type { Problem } from '../problem.ts';
import { Rng } from '../../rng.ts';
import { draftOf, endOf, putIn, positionOf, stepsOf, takeOut, thin, type Draft } from '../what-if/draft.ts';

/** Positions tried per operation and machine in one go; timing takes ten times as long with limited crews or things shared. */
const MOST = 30;
const MOST_CONTENDED = 6;
/** Positions on either side of its own that are always among them. */
const CLOSE = 3;
const TINY = 1e-6;

/**
 * The operations that a breakdown may move first: loose steps on these machines of jobs that now end later than in the
 * plan that was published, and the later steps of those jobs.
 */
export function nearBy(problem: Problem, draft: Draft, machines: ReadonlySet<number>): number[] {
  return Array.from({ length: problem.jobs }, (_, job) => job)
    .filter((job) => endOf(problem, draft, job) > problem.reference[job]!)
    .flatMap((job) => {
      const steps = stepsOf(problem, job);
      const first = steps.findIndex((o) => machines.has(draft.timing.machine[o]!));
      return first === -1 ? [] : steps.slice(first).filter((o) => !problem.fixed[o]);
    });
}

/**
 * Moves these operations one by one, in an order drawn from the seed, each to the position that costs the plan least if that
 * gains; again and again until none gains. It yields after each operation, the same draft when it stays.
 */
export function* improveNearBy(
  problem: Problem,
  start: Draft,
  operations: readonly number[],
  seed: number,
): Generator<Draft, void> {
  const rng = new Rng(seed);
  let best = start;
  for (let gained = true; gained;) {
    gained = false;
    for (const o of rng.shuffled(operations)) {
      const moved = bestPosition(problem, best, o);
      gained ||= moved !== best;
      best = moved;
      yield best;
    }
  }
}

/** The plan with the operation where the plan costs least; the plan as it is when no other position gains. */
function bestPosition(problem: Problem, draft: Draft, o: number): Draft {
  const apart = takeOut(problem, draft.queues, [o]);
  const home = draft.timing.machine[o]!;
  const most = isContended(problem) ? MOST_CONTENDED : MOST;
  let best = draft;
  for (const machine of problem.eligible[o]!) {
    const front = problem.front[machine]!.length;
    const positions = Array.from({ length: apart[machine]!.length - front + 1 }, (_, k) => front + k);
    const own = positionOf(draft, o);
    const close = machine === home ? positions.filter((position) => Math.abs(position - own) <= CLOSE) : [];
    for (const position of new Set([...close, ...thin(positions, most)])) {
      const tried = draftOf(problem, putIn(problem, apart, o, { machine, position }));
      if (tried !== null && tried.objective < best.objective - TINY) best = tried;
    }
  }
  return best;
}
