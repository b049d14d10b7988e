import { checkHeld } from './check-held.ts';
import { checkHours } from './check-hours.ts';
import { checkQuality } from './check-quality.ts';
import { checkQueues } from './check-queues.ts';
import { checkRouting } from './check-routing.ts';
import type { Problem, Schedule } from './problem.ts';
import type { Violation } from './violation.ts';

/**
 * Everything a schedule breaks; empty means it can be carried out and its figures are right. Independent on purpose: it
 * reads only `problem.input`, has its own calendar arithmetic and shares no code with the decoder or the search.
 * It allows an operation to start later than it could, but never sooner.
 */
export function check(problem: Problem, schedule: Schedule): Violation[] {
  const { input } = problem;
  const presence = checkQueues(input, schedule);
  if (
    presence.some(
      (violation) => violation.rule === 'every operation once' || violation.rule === 'able machine',
    )
  )
    return presence;
  return [
    ...presence,
    ...checkHours(input, schedule),
    ...checkRouting(input, schedule),
    ...checkHeld(input, schedule),
    ...checkQuality(input, schedule),
  ];
}
