import type { Problem } from '../problem.ts';
import { readyAt } from '../timing.ts';
import { draftOf, endOf, putIn, stepsOf, takeOut, type Draft } from '../what-if/draft.ts';

/** How many operations behind an idle stretch are looked at: what waits longer is not missed by it. */
const LOOKED_AT = 12;
const TINY = 1e-6;

/**
 * Fills the stretches for which a machine stands still before a step of the rush, since its blanks are not cut yet or a
 * better run was left for it: work that waits behind it there goes before it, where that makes no job of the rush end
 * later and the plan costs no more.
 * @param draft all jobs in it
 * @param jobs the rush, by job number
 */
export function fillIdle(problem: Problem, draft: Draft, jobs: readonly number[]): Draft {
  let filled = draft;
  for (const o of jobs.flatMap((job) => stepsOf(problem, job)).filter((step) => !problem.fixed[step]))
    for (let better = filledBefore(problem, filled, o, jobs); better;) {
      filled = better;
      better = filledBefore(problem, filled, o, jobs);
    }
  return filled;
}

/** The best plan with one more operation before this step; null when none fits. */
function filledBefore(problem: Problem, draft: Draft, o: number, jobs: readonly number[]): Draft | null {
  const machine = draft.timing.machine[o]!;
  if (problem.tracks[machine]!.only !== null) return null;
  const queue = Array.from(draft.queues[machine]!);
  const position = queue.indexOf(o);
  const { start, end, changeover } = draft.timing;
  const before = position === 0 ? problem.availableFrom[machine]! : end[queue[position - 1]!]!;
  const idle = start[o]! - changeover[o]! - before;
  if (idle <= 0) return null;
  let best: Draft | null = null;
  for (const other of queue.slice(position + 1, position + 1 + LOOKED_AT)) {
    const work = problem.seconds[other * problem.machines + machine]!;
    if (problem.fixed[other] || work > idle || readyAt(problem, draft.timing, other) > start[o]!) continue;
    const apart = takeOut(problem, draft.queues, [other]);
    const tried = draftOf(problem, putIn(problem, apart, other, { machine, position }));
    if (
      tried !== null &&
      gains(problem, draft, tried, jobs) &&
      (best === null || cheaper(problem, tried, best))
    )
      best = tried;
  }
  return best;
}

/** No job of the rush ends later, and the plan is better; of equally good ones the one whose jobs end sooner is. */
const gains = (problem: Problem, draft: Draft, tried: Draft, jobs: readonly number[]): boolean =>
  jobs.every((job) => endOf(problem, tried, job) <= endOf(problem, draft, job)) &&
  cheaper(problem, tried, draft);

function cheaper(problem: Problem, a: Draft, b: Draft): boolean {
  if (Math.abs(a.objective - b.objective) > TINY) return a.objective < b.objective;
  const flow = (draft: Draft) =>
    problem.input.jobs.reduce((sum, _, job) => sum + endOf(problem, draft, job), 0);
  return flow(a) < flow(b);
}
