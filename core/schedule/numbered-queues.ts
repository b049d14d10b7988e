import type { Problem } from './problem.ts';
import { objectiveOf, termsOf } from './score.ts';
import { timeQueues } from './time-queues.ts';
import { emptyTiming } from './timing.ts';
import { NEVER } from './working-time.ts';

/** Per machine, operation numbers in order: queues as the engine works on them. */
export type NumberedQueues = readonly ArrayLike<number>[];

/** Objective of complete queues; Infinity when they wait for each other or run out of open hours. */
export function objectiveAt(problem: Problem, queues: NumberedQueues): number {
  const timing = timeQueues(problem, queues, emptyTiming(problem));
  if (timing.placed < problem.operations || timing.end.some((end) => end >= NEVER)) return Infinity;
  return objectiveOf(problem.input.objective, termsOf(problem, timing.end, timing.changeover));
}

/** The queues with the fixed operations where they belong and the others in the order they had. */
export function withFixedPositions(problem: Problem, queues: NumberedQueues): NumberedQueues {
  return problem.front.map((front, m) => {
    const queue = [...front, ...Array.from(queues[m]!).filter((o) => !problem.fixed[o])];
    for (const pin of problem.pins[m]!) queue.splice(Math.min(pin.position, queue.length), 0, pin.operation);
    return Int32Array.from(queue);
  });
}
