import type { Problem } from '../problem.ts';
import { readyAt } from '../timing.ts';
import { draftOf, putIn, positionAt, stepsOf, type Draft } from '../what-if/draft.ts';

/**
 * How many operations back a machine may be held free for a step before still at work. Holding it longer does not bring the
 * rush forward unless a changeover must fit in.
 */
const HELD_BACK = 6;

/**
 * Puts a job's loose steps in, each on the machine and at the position where it ends soonest, whoever has to wait; of equally
 * soon positions the one that costs the plan least, then the latest. So the first step goes to the front of its queue,
 * behind what is started and frozen, and a later one to the front as it will be when the step before is done.
 * @param draft the job's loose steps left out
 * @returns null when no position can be timed (queues in a circle, open hours that run out)
 */
export function putInFront(problem: Problem, draft: Draft, job: number): Draft | null {
  let placed = draft;
  for (const o of stepsOf(problem, job).filter((step) => !problem.fixed[step])) {
    const best = soonest(problem, placed, o);
    if (best === null) return null;
    placed = best;
  }
  return placed;
}

function soonest(problem: Problem, draft: Draft, o: number): Draft | null {
  const ready = readyAt(problem, draft.timing, o);
  let best: Draft | null = null;
  for (const machine of problem.eligible[o]!) {
    const last = positionAt(problem, draft, machine, ready);
    const first = Math.max(problem.front[machine]!.length, last - HELD_BACK);
    for (let position = last; position >= first; position--) {
      const tried = draftOf(problem, putIn(problem, draft.queues, o, { machine, position }));
      if (tried !== null && (best === null || sooner(tried, best, o))) best = tried;
    }
  }
  return best;
}

const sooner = (a: Draft, b: Draft, o: number): boolean =>
  a.timing.end[o]! < b.timing.end[o]! || (a.timing.end[o] === b.timing.end[o] && a.objective < b.objective);
