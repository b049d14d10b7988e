import type { LaunchSolver } from '../solver/launch.ts';
import type { AskSolver, Found } from '../solver/messages.ts';

/** How long past its budget, or past a stop, the process may take to answer before it is ended. */
const GRACE_MS = 3000;

export interface AskRun {
  /** Null when it was answered, else what went wrong, for the log. The process is gone then. */
  readonly end: Promise<string | null>;
  /** Ask for the best so far; `end` then resolves soon. */
  stop(): void;
}

/** One longer question, answered in a process of its own. */
export function startAsk(launch: LaunchSolver, ask: AskSolver, onFound: (found: Found) => void): AskRun {
  const solver = launch();
  const end = new Promise<string | null>((resolve) => {
    const late = setTimeout(() => finish('it did not answer in time'), ask.budgetMs + GRACE_MS);
    const finish = (failure: string | null): void => {
      clearTimeout(late);
      resolve(failure);
      solver.kill();
    };
    solver.onExit(() => finish('its process ended'));
    solver.onMessage((message) => {
      if (message.runId !== ask.runId) return;
      if (message.kind === 'failed') return finish(message.message);
      if (message.kind !== 'found' && message.kind !== 'answered') return;
      onFound(message);
      if (message.kind === 'answered') finish(null);
    });
    solver.send(ask);
  });
  return {
    end,
    stop() {
      solver.send({ kind: 'stop', runId: ask.runId });
      setTimeout(() => solver.kill(), GRACE_MS).unref();
    },
  };
}
