import type { LaunchSolver } from '../solver/launch.ts';
import type { AskSolver, Found } from '../solver/messages.ts';
import { stopSolver, untilDone } from './solver-run.ts';

export interface AskRun {
  /** Null when it was answered, else what went wrong, for the log. The process is gone then. */
  readonly end: Promise<string | null>;
  /** Ask for the best so far; `end` then resolves soon. */
  stop(): void;
}

/** One longer question, answered in a process of its own. */
export function startAsk(launch: LaunchSolver, ask: AskSolver, onFound: (found: Found) => void): AskRun {
  const solver = launch();
  const end = untilDone(solver, ask, (answer) => {
    if (answer.kind !== 'found' && answer.kind !== 'answered') return false;
    onFound(answer);
    return answer.kind === 'answered';
  });
  return {
    end,
    stop: () => stopSolver(solver, ask.jobId),
  };
}
