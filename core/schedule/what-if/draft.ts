import type { Problem } from '../problem.ts';
import { withFixedPositions, type NumberedQueues } from '../numbered-queues.ts';
import { objectiveOf, termsOf } from '../score.ts';
import { emptyTiming, type Timing } from '../timing.ts';
import { timeQueues } from '../time-queues.ts';
import { NEVER } from '../working-time.ts';

/** Queues being tried, with their times and objective. Jobs, or the last steps of one, may be left out of them. */
export interface Draft {
  readonly queues: NumberedQueues;
  readonly timing: Timing;
  /** Comparable only with drafts that leave out the same operations. */
  readonly objective: number;
  readonly changeoverSeconds: number;
}

/** A position in a queue: the operation would come after the first `position` ones there. */
export interface QueuePosition {
  readonly machine: number;
  readonly position: number;
}

/** Times and evaluates queues; null when they wait for each other in a circle or run out of open hours. */
export function draftOf(problem: Problem, queues: NumberedQueues): Draft | null {
  const timing = timeQueues(problem, queues, emptyTiming(problem));
  const listed = queues.reduce((sum, queue) => sum + queue.length, 0);
  if (timing.placed < listed || timing.end.some((end) => end >= NEVER)) return null;
  const terms = termsOf(problem, timing.end, timing.changeover);
  return {
    queues,
    timing,
    objective: objectiveOf(problem.input.objective, terms),
    changeoverSeconds: terms.changeover,
  };
}

/** The queues without these operations; fixed ones (started, frozen, pinned) stay. */
export function takeOut(
  problem: Problem,
  queues: NumberedQueues,
  operations: readonly number[],
): NumberedQueues {
  const out = new Set(operations.filter((o) => !problem.fixed[o]));
  return withPins(
    problem,
    queues.map((queue) => Int32Array.from(queue).filter((o) => !out.has(o))),
  );
}

/** The queues with one more operation; pinned ones keep their position. */
export function putIn(
  problem: Problem,
  queues: NumberedQueues,
  o: number,
  target: QueuePosition,
): NumberedQueues {
  const old = queues[target.machine]!;
  const queue = new Int32Array(old.length + 1);
  for (let k = 0; k < target.position; k++) queue[k] = old[k]!;
  queue[target.position] = o;
  for (let k = target.position; k < old.length; k++) queue[k + 1] = old[k]!;
  const next = [...queues];
  next[target.machine] = queue;
  return withPins(problem, next);
}

const withPins = (problem: Problem, queues: NumberedQueues): NumberedQueues =>
  problem.pins.some((pins) => pins.length > 0) ? withFixedPositions(problem, queues) : queues;

/** The first position on a machine at which nothing listed starts before the instant. */
export function positionAt(problem: Problem, draft: Draft, machine: number, instant: number): number {
  const queue = draft.queues[machine]!;
  let position = problem.front[machine]!.length;
  while (position < queue.length && draft.timing.start[queue[position]!]! < instant) position += 1;
  return position;
}

/** How many operations come before this one in its queue. */
export const positionOf = ({ queues, timing }: Draft, o: number): number =>
  Array.from(queues[timing.machine[o]!]!).indexOf(o);

/** Operation numbers of a job, in routing order. */
export function stepsOf(problem: Problem, job: number): number[] {
  const first = problem.firstOf[job]!;
  return Array.from({ length: problem.firstOf[job + 1]! - first }, (_, k) => first + k);
}

/** End of a job's last operation. */
export const endOf = (problem: Problem, { timing }: Draft, job: number): number =>
  timing.end[problem.firstOf[job + 1]! - 1]!;

/** Ends by job id; meaningless for jobs whose last step is left out. */
export const endsOf = (problem: Problem, draft: Draft): Record<string, number> =>
  Object.fromEntries(problem.input.jobs.map(({ id }, job) => [id, endOf(problem, draft, job)]));

/** At most so many of the items, evenly spread, the first and the last among them. */
export function thin<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  return Array.from(
    { length: most },
    (_, k) => items[Math.round((k * (items.length - 1)) / Math.max(1, most - 1))]!,
  );
}
