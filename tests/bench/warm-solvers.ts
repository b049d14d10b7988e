import { join } from 'node:path';
import { startRun } from '../../electron/service/search-run.ts';
import { searchProcesses } from '../../electron/service/search.ts';
import { nodeSolver, type LaunchSolver, type Solver } from '../../electron/solver/launch.ts';
import type { FromSolver } from '../../electron/solver/messages.ts';

/** Nothing to do: whoever answers it is up and running. */
const NOTHING = {
  jobId: 'warm-up',
  problem: {
    name: 'warm-up',
    now: 0,
    machines: [{ id: 'M', stage: 's', initial: null, changeover: null, open: null }],
    jobs: [],
    objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 },
  },
  queues: {},
  seconds: 0,
  seed: 1,
  onProgress: () => undefined,
};

const launchCold = nodeSolver(join(import.meta.dirname, '../../electron/solver/solver.ts'));

/** A process and who listens to it at present. */
interface Warm {
  readonly solver: Solver;
  hear: (message: FromSolver) => void;
  gone: () => void;
}

function warm(): Warm {
  const made: Warm = { solver: launchCold(), hear: () => undefined, gone: () => undefined };
  made.solver.onMessage((message) => made.hear(message));
  made.solver.onExit(() => made.gone());
  return made;
}

/**
 * Solver processes that go on to the next problem when one is done, so that many short benches do not measure how long a
 * process takes to start. One that is ended in the middle of its work is not used again.
 */
export async function warmSolvers(): Promise<{ launch: LaunchSolver; end(): void }> {
  const idle: Warm[] = [];
  const all: Warm[] = [];
  const launch: LaunchSolver = () => {
    const own = idle.pop() ?? warm();
    if (!all.includes(own)) all.push(own);
    let working = true;
    let mine = true;
    return {
      send: (message) => own.solver.send(message),
      onExit: (listener) => void (own.gone = listener),
      onMessage: (listener) =>
        void (own.hear = (message) => {
          working &&= message.kind !== 'done';
          listener(message);
        }),
      kill() {
        if (!mine) return;
        mine = false;
        if (working) own.solver.kill();
        else idle.push(own);
      },
    };
  };
  await startRun({ ...NOTHING, processes: searchProcesses(), launch }).end;
  return { launch, end: () => all.forEach(({ solver }) => solver.kill()) };
}
