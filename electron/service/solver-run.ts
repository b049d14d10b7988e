import type { Solver } from '../solver/launch.ts';
import type { FromSolver, ToSolver } from '../solver/messages.ts';

/** How long past its budget a solver process may take to answer; its start on a busy machine is part of that. */
const GRACE_MS = 12_000;

/**
 * How long after a stop. A stop is obeyed within a tenth of a second, so a process that is deep in a step is ended; what it
 * found was told before.
 */
const STOP_GRACE_MS = 80;

/** Ask for the best so far, and end the process if it does not answer at once. */
export function stopSolver(solver: Solver, jobId: string): void {
  solver.send({ kind: 'stop', jobId });
  setTimeout(() => solver.kill(), STOP_GRACE_MS).unref();
}

type Work = Exclude<ToSolver, { kind: 'stop' | 'question' }>;
type Answer = Exclude<FromSolver, { kind: 'failed' }>;

/**
 * Give a solver process its work and hear what it says until it is done, fails, goes silent or goes away; a message of
 * another run is ignored.
 * @param take hears each answer; true when it was the last
 * @returns null when the work was done, else what went wrong, for the log; the process is gone then
 */
export function untilDone(
  solver: Solver,
  work: Work,
  take: (answer: Answer) => boolean,
): Promise<string | null> {
  return new Promise((resolve) => {
    const late = setTimeout(() => finish('it did not answer in time'), work.budgetMs + GRACE_MS);
    const finish = (failure: string | null): void => {
      clearTimeout(late);
      resolve(failure);
      solver.kill();
    };
    solver.onExit(() => finish('its process ended'));
    solver.onMessage((message) => {
      if (message.jobId !== work.jobId) return;
      if (message.kind === 'failed') finish(message.message);
      else if (take(message)) finish(null);
    });
    solver.send(work);
  });
}
