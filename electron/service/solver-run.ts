import type { Solver } from '../solver/launch.ts';
import type { FromSolver, ToSolver } from '../solver/messages.ts';

/** How long past its budget, or past a stop, a solver process may take to answer before it is ended. */
export const GRACE_MS = 3000;

type Work = Exclude<ToSolver, { kind: 'stop' }>;
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
      if (message.runId !== work.runId) return;
      if (message.kind === 'failed') finish(message.message);
      else if (take(message)) finish(null);
    });
    solver.send(work);
  });
}
